import { isAllowed, type Actor } from '@/lib/access/rules';
import { listCommissions } from '@/lib/commissions/reads';
import type { Day } from '@/lib/dates/rules';
import { listOrders } from '@/lib/orders/reads';
import { listKept, type PromiseKept } from '@/lib/orders/reads/promises';
import { clockWords } from '@/lib/orders/rules';

/** One promise, whatever it is about: to whom, by when, and whose clock runs. */
export type Promised = {
  key: string;
  /** In words: special order 12, commission 4, a hold. */
  sort: string;
  href: string | null;
  what: string;
  forWhom: string;
  on: Day;
  stands: string;
  clock: string;
  isLate: boolean;
};

/** Everything that was promised to anybody with a day, the earliest first. */
export async function gatherPromises(
  actor: Actor,
  todayOn: Day,
  zone: string,
): Promise<Promised[]> {
  const [orders, commissions, kept] = await Promise.all([
    listOrders(actor, todayOn, zone),
    listCommissions(actor),
    listKept(actor, zone),
  ]);
  const mayHold = isAllowed(actor.roles, 'stock.hold');
  const all: Omit<Promised, 'isLate'>[] = [
    ...orders.open.map((order) => ({
      ...{ key: order.id, sort: `special order ${order.number}`, href: `/orders/${order.number}` },
      ...{ what: `${order.quantity} × ${order.title}`, forWhom: order.collector.name },
      ...{ on: order.readyAboutOn, stands: order.standing.words },
      clock: clockWords[order.standing.clock],
    })),
    ...commissions.flatMap(({ number, title, collector, promisedOn, sentence, waitsOn }) =>
      promisedOn === null
        ? []
        : [
            {
              ...{ key: `commission ${number}`, sort: `commission ${number}` },
              ...{ href: `/commissions/${number}`, what: title, forWhom: collector },
              ...{ on: promisedOn, stands: sentence, clock: clockWords[waitsOn] },
            },
          ],
    ),
    ...kept.map((each) => keptOf(each, mayHold)),
  ];
  return all
    .map((each) => ({ ...each, isLate: each.on < todayOn }))
    .toSorted((one, other) => one.on.localeCompare(other.on) || one.key.localeCompare(other.key));
}

const keptWords: Readonly<Record<PromiseKept['kind'], { sort: string; stands: string }>> = {
  layaway: { sort: 'layaway', stands: 'To be paid off by then.' },
  hold: { sort: 'hold', stands: 'Kept back until then.' },
  approval: { sort: 'on approval', stands: 'To be bought or brought back by then.' },
  to_collect: { sort: 'receipt', stands: 'Sold, and still hanging here.' },
};

function keptOf(each: PromiseKept, mayHold: boolean): Omit<Promised, 'isLate'> {
  const { kind, key, number, what, forWhom, on } = each;
  const { sort, stands } = keptWords[kind];
  const told = { key, sort: `${sort} ${number ?? ''}`.trim(), what, forWhom, on, stands };
  return { ...told, href: mayHold ? hrefOf(each) : null, clock: clockWords.collector };
}

function hrefOf({ kind, number }: PromiseKept): string {
  if (kind === 'layaway') return `/layaways/${number ?? ''}`;
  if (kind === 'to_collect') return `/receipts/${number ?? ''}`;
  return kind === 'hold' ? '/holds' : '/on-approval';
}
