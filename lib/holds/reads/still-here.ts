import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';

/** A piece that was sold and still hangs here. */
export type StillHere = {
  saleLineId: string;
  code: string | null;
  title: string;
  quantity: number;
  forWhom: string | null;
  phone: string | null;
  receipt: number;
  place: string;
  untilOn: Day;
  note: string;
};

/** The most sold pieces that a list shows. */
export const stillHereListed = 100;

/** What was sold and still hangs here, what is to be fetched first before the rest. */
export async function listStillHere(actor: Actor): Promise<StillHere[]> {
  assertAllowed(actor, 'stock.hold');
  return readStillHere({ collectedAt: null });
}

/** What was sold of one SKU and still hangs here, for the piece's own page. */
export async function listStillHereOf(actor: Actor, skuId: string): Promise<StillHere[]> {
  assertAllowed(actor, 'stock.see');
  return readStillHere({ collectedAt: null, saleLine: { skuId } });
}

async function readStillHere(where: Prisma.ToCollectWhereInput): Promise<StillHere[]> {
  const rows = await db().toCollect.findMany({
    where,
    orderBy: [{ untilOn: 'asc' }, { saleLineId: 'asc' }],
    take: stillHereListed,
    select: {
      ...{ saleLineId: true, untilOn: true, note: true, place: { select: { name: true } } },
      saleLine: {
        select: {
          ...{ title: true, quantity: true, sku: { select: { code: true } } },
          sale: { select: { number: true, collector: { select: { name: true, phone: true } } } },
        },
      },
    },
  });
  return rows.map(({ saleLineId, untilOn, note, place, saleLine }) => ({
    ...{ saleLineId, note, place: place.name, untilOn: dayFromDate(untilOn) },
    ...{ code: saleLine.sku?.code ?? null, title: saleLine.title, quantity: saleLine.quantity },
    forWhom: saleLine.sale.collector?.name ?? null,
    phone: saleLine.sale.collector?.phone ?? null,
    receipt: saleLine.sale.number,
  }));
}
