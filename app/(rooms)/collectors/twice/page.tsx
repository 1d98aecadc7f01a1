import type { Metadata } from 'next';
import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { FindForm } from '@/app/ui/form/find-form';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { findCollectors, getCollector, type CollectorPage } from '@/lib/collectors/reads';
import {
  listTwice,
  pairsListed,
  type OneOfTwo,
  type PairShown,
} from '@/lib/collectors/reads/twice';
import { addressLine, collectorKindWords, lettersOf } from '@/lib/collectors/rules';
import css from '../collectors.module.css';
import { MergeForm, type Side } from './merge-form';

export const metadata: Metadata = { title: 'Found twice' };

type TwicePageProps = Readonly<{
  searchParams: Promise<{ of?: string | string[]; find?: string | string[] }>;
}>;

/** Entries of the address book that are likely one and the same person. */
export default async function TwicePage({ searchParams }: TwicePageProps) {
  const actor = await requireActor('collectors.merge');
  const { of, find } = await searchParams;
  const one = typeof of === 'string' ? await getCollector(actor, of) : null;
  return (
    <>
      <PageHead
        title="Found twice"
        lead="Nothing is lost when two are found to be one: every paper stays where it was written, and is looked up at the kept entry. It can be undone."
        back={{ href: '/collectors', name: 'Collectors' }}
      />
      {one ? (
        <OneWithAnother {...{ actor, one }} letters={typeof find === 'string' ? find : ''} />
      ) : (
        <Pairs pairs={await listTwice(actor)} />
      )}
    </>
  );
}

function Pairs({ pairs }: Readonly<{ pairs: readonly PairShown[] }>) {
  if (pairs.length === 0) {
    return (
      <Empty title="Nobody seems to be there twice">
        Those with the same mail address or telephone are shown here, and those of one place whose
        names are written nearly alike. To say it of two others, begin at the page of one of them.
      </Empty>
    );
  }
  return (
    <>
      {pairs.length >= pairsListed ? (
        <p className={css['quiet']}>
          The likeliest {pairsListed}; more come when these are settled.
        </p>
      ) : null}
      {pairs.map((pair) => (
        <Pair key={`${pair.one.id} ${pair.other.id}`} pair={pair} />
      ))}
    </>
  );
}

function Pair({ pair }: Readonly<{ pair: PairShown }>) {
  const { one, other, why, setApartOn } = pair;
  return (
    <Section title={`${one.name} and ${other.name}`}>
      <ul>
        {why.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
        {setApartOn ? (
          <li>
            They were set apart on <DayText day={setApartOn} style="short" />.
          </li>
        ) : null}
      </ul>
      <p>
        Look at <Link href={`/collectors/${one.id}`}>{one.name}</Link> and{' '}
        <Link href={`/collectors/${other.id}`}>{other.name}</Link> first.
      </p>
      <MergeForm one={sideOf(one)} other={sideOf(other)} />
    </Section>
  );
}

function sideOf({ id, kind, name, firm, email, phone, address, ...rest }: OneOfTwo): Side {
  const counts = [counted(rest.sales, 'sale'), counted(rest.commissions, 'commission')];
  const known = [collectorKindWords[kind], firm, phone, email, address, ...counts];
  return { id, name, hint: known.filter((part) => part !== null).join(' · ') };
}

function counted(count: number, word: string): string | null {
  if (count === 0) return null;
  return count === 1 ? `1 ${word}` : `${count} ${word}s`;
}

type OneProps = Readonly<{ actor: Actor; one: CollectorPage; letters: string }>;

/** One entry, and those of whom somebody thinks that they are the same. */
async function OneWithAnother({ actor, one, letters: typed }: OneProps) {
  const letters = lettersOf(typed);
  const found = letters === '' ? [] : await findCollectors(actor, letters);
  const others = found.filter(({ id }) => id !== one.id).slice(0, 12);
  const hint = [one.phone, one.email, addressLine(one)].filter((part) => part !== null);
  return (
    <Section title={`Who is the same as ${one.name}?`}>
      <FindForm
        action="/collectors/twice"
        label="A few letters of the other name, mail or telephone"
        letters={letters}
      >
        <input type="hidden" name="of" value={one.id} />
      </FindForm>
      {letters !== '' && others.length === 0 ? <p>Nobody else is like that.</p> : null}
      {others.map(({ id, name, city, phone, email }) => (
        <MergeForm
          key={id}
          one={{ id: one.id, name: one.name, hint: hint.join(' · ') }}
          other={{
            id,
            name,
            hint: [city, phone, email].filter((part) => part !== null).join(' · '),
          }}
        />
      ))}
    </Section>
  );
}
