import Link from 'next/link';
import { FindForm } from '@/app/ui/form/find-form';
import type { Actor } from '@/lib/access/rules';
import { findCollectors, type CollectorFound } from '@/lib/collectors/reads';
import { shortReach } from '@/lib/collectors/rules';
import { writeChosen } from '@/lib/holds/rules/chosen';
import { choosingHref, type Choosing } from './choosing';
import css from './holds.module.css';

const shownMost = 8;

type ChooseCollectorProps = Readonly<{
  actor: Actor;
  base: string;
  choosing: Choosing;
  /** The name of whoever was chosen. */
  chosen: string | null;
}>;

/** For whom: found by a few letters, and taken off by a touch. */
export async function ChooseCollector({ actor, base, choosing, chosen }: ChooseCollectorProps) {
  if (chosen !== null) {
    return (
      <p className={css['chosen']}>
        <span>
          For <strong>{chosen}</strong>
        </span>
        <Link href={choosingHref(base, choosing, { collectorId: null })} prefetch={false}>
          Somebody else
        </Link>
      </p>
    );
  }
  const { who } = choosing;
  const found = who ? (await findCollectors(actor, who)).slice(0, shownMost) : [];
  return (
    <div className={css['step']}>
      <FindForm
        action={base}
        name="who"
        label="For whom? A few letters of the name"
        letters={who ?? ''}
      >
        <ChosenFields choosing={choosing} />
      </FindForm>
      {who ? (
        <ul className={css['found']} aria-label="Collectors">
          {found.map((each) => (
            <One
              key={each.id}
              each={each}
              href={choosingHref(base, choosing, { collectorId: each.id })}
            />
          ))}
        </ul>
      ) : null}
      {who && found.length === 0 ? (
        <p>
          Nobody is like “{who}”.{' '}
          <Link href={`/collectors/new?name=${encodeURIComponent(who)}`}>Add them</Link>, and come
          back to this page.
        </p>
      ) : null}
    </div>
  );
}

function One({ each, href }: Readonly<{ each: CollectorFound; href: string }>) {
  return (
    <li>
      <Link href={href} prefetch={false}>
        <strong>{each.name}</strong>
        <span className={css['quiet']}>
          {[each.city, shortReach(each)].filter((part) => part !== null).join(' · ')}
        </span>
      </Link>
    </li>
  );
}

/** What was chosen so far, so that looking for something else does not lose it. */
export function ChosenFields({ choosing }: Readonly<{ choosing: Choosing }>) {
  const { pieces, collectorId, holdId } = choosing;
  return (
    <>
      {pieces.length > 0 ? <input type="hidden" name="pieces" value={writeChosen(pieces)} /> : null}
      {collectorId === null ? null : <input type="hidden" name="for" value={collectorId} />}
      {holdId === '' ? null : <input type="hidden" name="hold" value={holdId} />}
    </>
  );
}
