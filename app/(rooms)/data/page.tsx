import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed, type Role } from '@/lib/access/rules';
import { listLoads, type Load } from '@/lib/data/reads';
import { loadKindWords } from '@/lib/data/rules/plan';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { BringInForm } from './bring-in-form';
import { standingWords } from './standing-words';
import css from './data.module.css';

export const metadata: Metadata = { title: 'Files in and out' };

/** What can be taken out as files, and brought in from them. */
export default async function FilesPage() {
  const actor = await requireActor('stock.see');
  const mayLoad = isAllowed(actor.roles, 'stock.load');
  const { timeZone } = await getGallery();
  const loads = mayLoad ? await listLoads(actor, now()) : [];
  return (
    <>
      <PageHead
        title="Files in and out"
        lead="Everything here is yours: take it along as plain files, or bring in what you had before."
      />
      <InThisRoom room="stock" here="files" roles={actor.roles} />
      <TakeOut roles={actor.roles} />
      <BringIn roles={actor.roles} />
      <LoadsBefore loads={loads} timeZone={timeZone} />
    </>
  );
}

const files = [
  {
    href: '/data/stock',
    name: 'The stock',
    what: 'One line for each piece: sizes, price, cost, how many are here and elsewhere.',
  },
  {
    href: '/data/people',
    name: 'The people',
    what: 'One line for each collector in the address book, with the key that knows them again.',
  },
  {
    href: '/data/sales',
    name: 'The sales',
    what: 'One line for each line of a receipt, with its tax and how it was paid.',
  },
] as const;

function TakeOut({ roles }: Readonly<{ roles: readonly Role[] }>) {
  if (!isAllowed(roles, 'data.take_out')) {
    return (
      <Section title="Take out">
        <p>The owner and the bookkeeper take files out.</p>
      </Section>
    );
  }
  return (
    <Section
      title="Take out"
      lead="CSV in UTF-8, as every spreadsheet reads it. A text that a spreadsheet would reckon with begins with an apostrophe; it is taken off when the file is brought in."
    >
      <ul className={css['files']}>
        {files.map((file) => (
          <li key={file.href}>
            <ButtonLink href={file.href} variant="quiet" size="counter" download>
              {file.name}
            </ButtonLink>
            <p>{file.what}</p>
          </li>
        ))}
      </ul>
    </Section>
  );
}

function BringIn({ roles }: Readonly<{ roles: readonly Role[] }>) {
  const mayLoadStock = isAllowed(roles, 'stock.load');
  const mayBringIn = isAllowed(roles, 'data.bring_in');
  if (!mayLoadStock && !mayBringIn) return null;
  return (
    <Section
      title="Bring in"
      lead="First you see what each line would do. Nothing changes before you say so, and then all of it or nothing."
    >
      {mayLoadStock ? (
        <p>
          <ButtonLink href="/stock/list" variant="quiet" size="counter">
            Bring in a stock list
          </ButtonLink>
        </p>
      ) : null}
      {mayBringIn ? <BringInForm /> : <p>People and sales are brought in by the owner.</p>}
    </Section>
  );
}

type LoadsProps = Readonly<{ loads: readonly Load[]; timeZone: string }>;

function LoadsBefore({ loads, timeZone }: LoadsProps) {
  if (loads.length === 0) return null;
  return (
    <Section title="Brought in before">
      <Table
        caption="Brought in before"
        captionHeardOnly
        columns={[
          { name: 'File' },
          { name: 'Holds', wideOnly: true },
          { name: 'When' },
          { name: 'By', wideOnly: true },
          { name: 'How it ended' },
        ]}
        rows={loads.map((load) => ({
          key: load.id,
          cells: [
            <Link key="file" href={`/data/loads/${load.id}`}>
              {load.fileName}
            </Link>,
            loadKindWords[load.kind],
            <InstantText key="when" at={load.startedAt} zone={timeZone} />,
            load.by,
            standingWords(load),
          ],
        }))}
      />
    </Section>
  );
}
