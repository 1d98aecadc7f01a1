import Link from 'next/link';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import { findCollectors, getCollector } from '@/lib/collectors/reads';
import type { Actor } from '@/lib/access/rules';
import { writeSlip } from '@/lib/sales/rules/slip';
import { counterHref, type CounterPlace } from './address';
import css from './counter.module.css';

const shownMost = 8;

type ForWhomProps = Readonly<{ actor: Actor; place: CounterPlace }>;

/** Whose name goes on the receipt, if anyone's: found by letters, taken off by a touch. */
export async function ForWhom({ actor, place }: ForWhomProps) {
  const { collectorId, who } = place;
  const collector = collectorId === null ? null : await getCollector(actor, collectorId);
  if (collector) {
    return (
      <p className={css['for-whom']}>
        <span>
          For <strong>{collector.name}</strong>
        </span>
        <Link href={counterHref({ ...place, collectorId: null })} prefetch={false} scroll={false}>
          Take the name off
        </Link>
      </p>
    );
  }
  if (who === null) {
    return (
      <p className={css['for-whom']}>
        <span className={css['quiet']}>Nobody’s name is on it.</span>
        <Link href={counterHref(place, { who: '' })} prefetch={false} scroll={false}>
          Put a name on it
        </Link>
      </p>
    );
  }
  const found = (await findCollectors(actor, who)).slice(0, shownMost);
  return (
    <div className={css['who']}>
      <form action="/counter" role="search" className={css['find']}>
        <input type="hidden" name="slip" value={writeSlip(place.slip)} />
        <Field name="who" label="Whose name?" kind="search" size="counter" defaultValue={who} />
        <Button type="submit" variant="quiet" size="counter">
          Look
        </Button>
      </form>
      <ul className={css['results']} aria-label="Collectors">
        {found.map((each) => (
          <li key={each.id}>
            <Link
              href={counterHref({ ...place, collectorId: each.id })}
              prefetch={false}
              scroll={false}
              className={css['name']}
            >
              <strong>{each.name}</strong>
              <span className={css['quiet']}>{each.city ?? each.email ?? ''}</span>
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
