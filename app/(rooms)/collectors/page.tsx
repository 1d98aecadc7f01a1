import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { FindForm } from '@/app/ui/form/find-form';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { collectorsListed, findCollectors, type CollectorFound } from '@/lib/collectors/reads';
import { lettersOf, shortReach } from '@/lib/collectors/rules';
import css from './collectors.module.css';

export const metadata: Metadata = { title: 'Collectors' };

type CollectorsPageProps = Readonly<{ searchParams: Promise<{ find?: string | string[] }> }>;

/** The address book: who buys, found by a few letters. */
export default async function CollectorsPage({ searchParams }: CollectorsPageProps) {
  const actor = await requireActor('collectors.see');
  const { find } = await searchParams;
  const letters = lettersOf(typeof find === 'string' ? find : '');
  const found = await findCollectors(actor, letters);
  const mayAdd = isAllowed(actor.roles, 'collectors.write');
  return (
    <>
      <PageHead title="Collectors" lead="Who buys, lives with it, or brings others.">
        {mayAdd ? <ButtonLink href="/collectors/new">Add a collector</ButtonLink> : null}
        {isAllowed(actor.roles, 'collectors.merge') ? (
          <ButtonLink href="/collectors/twice" variant="quiet">
            Who is there twice
          </ButtonLink>
        ) : null}
      </PageHead>
      <FindForm
        action="/collectors"
        label="A few letters of the name, a mail address or a telephone number"
        letters={letters}
      />
      <p className={css['count']} role="status">
        {countWords(found.length, letters)}
      </p>
      {found.length > 0 ? (
        <ul className={css['list']}>
          {found.map((collector) => (
            <Line key={collector.id} collector={collector} />
          ))}
        </ul>
      ) : (
        <NobodyFound letters={letters} mayAdd={mayAdd} />
      )}
    </>
  );
}

function Line({ collector }: Readonly<{ collector: CollectorFound }>) {
  const { id, name, city } = collector;
  const reach = shortReach(collector);
  return (
    <li className={css['one']}>
      <Link href={`/collectors/${id}`} className={css['link']}>
        <span className={css['name']}>{name}</span>
        <span className={css['quiet']}>
          {[city, reach].filter((part) => part !== null).join(' · ')}
        </span>
      </Link>
    </li>
  );
}

function countWords(count: number, letters: string): string {
  if (letters === '') return count === 0 ? '' : 'Those who were added last come first.';
  if (count >= collectorsListed) return `The first ${collectorsListed}; a letter more finds fewer.`;
  return count === 1 ? 'One is like that.' : `${count} are like that.`;
}

function NobodyFound({ letters, mayAdd }: Readonly<{ letters: string; mayAdd: boolean }>) {
  const href =
    letters === '' ? '/collectors/new' : `/collectors/new?name=${encodeURIComponent(letters)}`;
  return (
    <Empty
      title={letters === '' ? 'Nobody is in the address book yet' : `Nobody is like “${letters}”`}
      act={mayAdd ? <ButtonLink href={href}>Add them</ButtonLink> : null}
    >
      A collector is written down when a commission is asked for, at the counter, or here. A name is
      enough to begin with.
    </Empty>
  );
}
