import Link from 'next/link';
import { FindForm } from '@/app/ui/form/find-form';
import type { Actor } from '@/lib/access/rules';
import { findCollectors, getCollector } from '@/lib/collectors/reads';
import type { OrderWish } from '@/lib/orders/input';
import { wishFields, wishHref } from './wish-address';
import css from '../orders.module.css';

const shownMost = 6;

type ForWhomProps = Readonly<{ actor: Actor; wish: OrderWish }>;

/** Somebody from the address book, found by letters; or somebody new, written in the form. */
export async function ForWhomIsIt({ actor, wish }: ForWhomProps) {
  const known = wish.collector === null ? null : await getCollector(actor, wish.collector);
  if (known) {
    return (
      <p>
        For <strong>{known.name}</strong>.{' '}
        <Link href={wishHref(wish, { collector: null })}>Somebody else</Link>
      </p>
    );
  }
  const who = wish.who?.trim() ?? '';
  const found = who === '' ? [] : (await findCollectors(actor, who)).slice(0, shownMost);
  return (
    <>
      <FindForm action="/orders/new" name="who" label="From the address book" letters={who}>
        {wishFields(wish).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
      </FindForm>
      <ul className={css['people']} aria-label="Collectors found">
        {found.map((each) => (
          <li key={each.id}>
            <Link href={wishHref(wish, { collector: each.id })}>
              {each.name}
              {each.city ? `, ${each.city}` : ''}
            </Link>
          </li>
        ))}
      </ul>
      {who !== '' && found.length === 0 ? <p>Nobody of that name yet: write them below.</p> : null}
    </>
  );
}
