import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { idsOf } from './group';

const ownedMost = 500;

/** A piece that hangs at somebody's, and where. */
export type OwnedShown = {
  /** Fit for a list on a page. */
  key: string;
  title: string;
  /** What it is, such as its size and colours; empty where nobody wrote it down. */
  what: string;
  /** How many of it are still theirs. */
  quantity: number;
  /** How it came to them. */
  by:
    | { kind: 'sale'; saleLineId: string; receiptNumber: number; on: Day; isGift: boolean }
    | { kind: 'commission'; commissionId: string; number: number; on: Day }
    | { kind: 'told' };
  /** Null until somebody wrote down where it hangs. */
  place: PlaceShown | null;
};

/** Where a piece hangs: in one of their further addresses or none, and the room and the wall. */
export type PlaceShown = {
  ownedId: string;
  addressId: string | null;
  addressLabel: string | null;
  hangs: string;
  note: string;
};

const placeSelect = {
  select: {
    ...{ id: true, addressId: true, hangs: true, note: true },
    address: { select: { label: true } },
  },
} as const;

/**
 * What somebody owns: what was sold to them and did not come back, what was made for them and
 * handed over, and what they told of. A shop's or a gallery's wares are not theirs to hang.
 *
 * @returns at most five hundred of each, the newest first
 */
export async function listOwned(actor: Actor, collectorId: string): Promise<OwnedShown[]> {
  assertAllowed(actor, 'collectors.see');
  const ids = [...(await idsOf(db(), collectorId))];
  const [bought, made, told] = await Promise.all([boughtBy(ids), madeFor(ids), toldOf(ids)]);
  return [...made, ...bought, ...told];
}

async function boughtBy(ids: string[]): Promise<OwnedShown[]> {
  const rows = await db().saleLine.findMany({
    where: {
      kind: 'piece',
      sale: { collectorId: { in: ids }, channel: { notIn: ['wholesale', 'consigned'] } },
    },
    select: {
      ...{ id: true, title: true, what: true, quantity: true, ownedAs: placeSelect },
      returned: { select: { quantity: true } },
      sale: { select: { number: true, soldOn: true, giftTo: true } },
    },
    orderBy: [{ sale: { soldOn: 'desc' } }, { sale: { number: 'desc' } }, { position: 'asc' }],
    take: ownedMost,
  });
  return rows.flatMap(({ id: saleLineId, sale, returned, ownedAs, quantity, title, what }) => {
    const left = returned.reduce((rest, each) => rest - each.quantity, quantity);
    if (left <= 0) return [];
    const { number: receiptNumber, soldOn, giftTo } = sale;
    const by = { kind: 'sale' as const, saleLineId, receiptNumber, on: dayFromDate(soldOn) };
    return {
      ...{ key: saleLineId, title, what, quantity: left, place: placeOf(ownedAs) },
      by: { ...by, isGift: giftTo !== '' },
    };
  });
}

async function madeFor(ids: string[]): Promise<OwnedShown[]> {
  const rows = await db().commission.findMany({
    where: { collectorId: { in: ids }, handOver: { isNot: null } },
    select: {
      ...{ id: true, number: true, title: true, ownedAs: placeSelect },
      handOver: {
        select: {
          handedOn: true,
          sale: { select: { lines: { select: { kind: true, quantity: true, returned: true } } } },
        },
      },
    },
    orderBy: { number: 'desc' },
    take: ownedMost,
  });
  return rows.flatMap(({ id: commissionId, number, title, handOver, ownedAs }) => {
    if (!handOver || isBack(handOver.sale.lines)) return [];
    const on = dayFromDate(handOver.handedOn);
    return {
      ...{ key: commissionId, title, what: '', quantity: 1, place: placeOf(ownedAs) },
      by: { kind: 'commission' as const, commissionId, number, on },
    };
  });
}

type HandedLine = { kind: string; quantity: number; returned: { quantity: number }[] };

/** Whether the work itself came back. */
function isBack(lines: readonly HandedLine[]): boolean {
  const work = lines.filter(({ kind }) => kind === 'commission');
  return (
    work.length > 0 &&
    work.every(({ quantity, returned }) => {
      const back = returned.reduce((sum, each) => sum + each.quantity, 0);
      return back >= quantity;
    })
  );
}

async function toldOf(ids: string[]): Promise<OwnedShown[]> {
  const rows = await db().ownedPiece.findMany({
    where: { collectorId: { in: ids }, saleLineId: null, commissionId: null },
    select: { title: true, ...placeSelect.select },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: ownedMost,
  });
  return rows.map(({ title, ...place }) => ({
    ...{ key: place.id, title, what: '', quantity: 1, by: { kind: 'told' } as const },
    place: placeOf(place),
  }));
}

type PlaceRow = {
  id: string;
  addressId: string | null;
  hangs: string;
  note: string;
  address: { label: string } | null;
};

function placeOf(row: PlaceRow | null): PlaceShown | null {
  if (!row) return null;
  const { id: ownedId, addressId, hangs, note, address } = row;
  return { ownedId, addressId, addressLabel: address?.label ?? null, hangs, note };
}
