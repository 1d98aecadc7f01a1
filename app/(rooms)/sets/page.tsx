import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { listSets, type SetShown } from '@/lib/catalogue/reads/sets';
import { maySplitWords } from '@/lib/catalogue/rules/sets';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

export const metadata: Metadata = { title: 'Sets' };

/** Pieces that belong together. */
export default async function SetsPage() {
  const actor = await requireActor('stock.see');
  const { timeZone } = await getGallery();
  const sets = await listSets(actor, dayOf(now(), timeZone));
  const mayKeep = isAllowed(actor.roles, 'catalogue.keep');
  const act = mayKeep ? <ButtonLink href="/sets/new">Put a set together</ButtonLink> : null;
  return (
    <>
      <PageHead title="Sets" lead="Pieces that belong together, with a price for the whole.">
        {sets.length === 0 ? null : act}
      </PageHead>
      <InThisRoom room="stock" here="sets" roles={actor.roles} />
      {sets.length === 0 ? (
        <Empty title="No set yet" act={act}>
          A row of tiles that tells one story, a pair that hangs together: write down which pieces
          belong to it and what they cost as one. The counter then finds it by its code.
        </Empty>
      ) : (
        <SetTable sets={sets} />
      )}
    </>
  );
}

function SetTable({ sets }: Readonly<{ sets: readonly SetShown[] }>) {
  return (
    <Table
      caption="Sets"
      captionHeardOnly
      columns={[
        { name: 'Set' },
        { name: 'Pieces', wideOnly: true },
        { name: 'Whole here', figure: true },
        { name: 'One by one', figure: true, wideOnly: true },
        { name: 'As a set', figure: true },
        { name: 'Split', wideOnly: true },
      ]}
      rows={sets.map((set) => ({
        key: set.setId,
        cells: [
          <span key="set">
            <Link href={`/sets/${set.code}`} className="work-title">
              {set.title}
            </Link>{' '}
            · {set.code}
          </span>,
          set.members
            .map((each) => (each.quantity > 1 ? `${each.quantity} × ${each.title}` : each.title))
            .join(', '),
          `${set.whole}`,
          <Money key="single" cents={set.singleCents} />,
          <Money key="whole" cents={set.priceCents ?? set.singleCents} />,
          maySplitWords[set.maySplit],
        ],
      }))}
    />
  );
}
