import type { Metadata } from 'next';
import Link from 'next/link';
import { FindForm } from '@/app/ui/form/find-form';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { findCollectors, getCollector } from '@/lib/collectors/reads';
import { lettersOf } from '@/lib/collectors/rules';
import { getGallery } from '@/lib/platform/settings';
import { readAsking } from '../asking/read-asking';
import { LogForm } from '../log-form';
import css from '../commissions.module.css';

export const metadata: Metadata = { title: 'Open a commission' };

type NewCommissionPageProps = Readonly<{
  searchParams: Promise<{ collector?: string | string[]; who?: string | string[] }>;
}>;

/** A request, written down while the collector stands there. */
export default async function NewCommissionPage({ searchParams }: NewCommissionPageProps) {
  const actor = await requireActor('commissions.write');
  const { collector, who } = await searchParams;
  const letters = lettersOf(typeof who === 'string' ? who : '');
  const known = typeof collector === 'string' ? await getCollector(actor, collector) : null;
  const { lengthUnit } = await getGallery();
  const asked = await readAsking(actor, null, lengthUnit);
  return (
    <>
      <PageHead
        title="Open a commission"
        lead="Write what they say. Whatever is not known yet stays open and shows as that."
        back={{ href: '/commissions', name: 'Commissions' }}
      />
      {known ? null : <WhoAsks actor={actor} letters={letters} />}
      <LogForm
        collector={known && { id: known.id, name: known.name }}
        newName={letters}
        asking={{ ...asked, known: null, lengthUnit, maySettleReferral: true }}
      />
    </>
  );
}

const shownMost = 6;

async function WhoAsks({ actor, letters }: Readonly<{ actor: Actor; letters: string }>) {
  const found = letters === '' ? [] : (await findCollectors(actor, letters)).slice(0, shownMost);
  return (
    <section className={css['who']} aria-label="Who asks for it">
      <FindForm
        action="/commissions/new"
        name="who"
        label="Have they bought here before? A few letters of the name"
        letters={letters}
      />
      {letters !== '' && found.length === 0 ? (
        <p className={css['quiet']}>Nobody is like “{letters}”. Write them down as new below.</p>
      ) : null}
      {found.length > 0 ? (
        <ul className={css['people']}>
          {found.map(({ id, name, city, phone }) => (
            <li key={id}>
              <Link href={`/commissions/new?collector=${id}`}>
                <strong>{name}</strong> <span className={css['quiet']}>{city ?? phone ?? ''}</span>
              </Link>
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}
