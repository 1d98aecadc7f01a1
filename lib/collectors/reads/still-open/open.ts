import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { dayOf, formatDay } from '@/lib/dates/rules';
import type { OpenThing } from '@/lib/collectors/rules/erase';

/** Accounts of the ledger: owed by collectors, and what is held or owed for them. */
const owedByThem = '1100';
const heldForThem = ['2000', '2010', '2020', '2300'];

type Of = { ids: readonly string[]; at: Date; zone: string };

/**
 * All that is open in somebody's name, under any of their entries: work, pieces, days and money.
 *
 * @returns nothing when nothing is open
 */
export async function readOpen(from: Prisma.TransactionClient, of: Of): Promise<OpenThing[]> {
  return [
    ...(await openPapers(from, of)),
    ...(await openPieces(from, of)),
    ...(await openMoney(from, of)),
  ];
}

function named(kind: Exclude<OpenThing['kind'], 'they_owe' | 'we_owe'>, names: string[]) {
  return names.length === 0 ? [] : [{ kind, names }];
}

function numbered(rows: readonly { number: number }[]): string[] {
  return rows.map(({ number }) => String(number));
}

const byNumber = { select: { number: true }, orderBy: { number: 'asc' } } as const;

/** What ends a shipment. */
const overIf = {
  kind: { in: ['arrived', 'fetched', 'called_off'] },
} satisfies Prisma.ShipmentEventWhereInput;

async function openPapers(from: Prisma.TransactionClient, { ids }: Of): Promise<OpenThing[]> {
  const collectorId = { in: [...ids] };
  const where = { collectorId, endedAt: null };
  const [commissions, layaways, holds, approvals, orders, shopOrders, sent] = await Promise.all([
    from.commission.findMany({ where: { collectorId, handOver: null, ending: null }, ...byNumber }),
    from.layaway.findMany({ where, ...byNumber }),
    from.hold.findMany({ where: { ...where, layawayId: null, orderId: null }, ...byNumber }),
    from.onApproval.findMany({ where, ...byNumber }),
    openOrders(from, ids),
    from.wholesaleOrder.findMany({ where: { ...where, saleId: null }, ...byNumber }),
    from.shipment.findMany({ where: { collectorId, events: { none: overIf } }, ...byNumber }),
  ]);
  return [
    ...named('commission', numbered(commissions)),
    ...named('layaway', numbered(layaways)),
    ...named('hold', numbered(holds)),
    ...named('approval', numbered(approvals)),
    ...named('order', numbered(orders)),
    ...named('shop_order', numbered(shopOrders)),
    ...named('shipment', numbered(sent)),
  ];
}

/** Special orders that were not called off, and of which pieces are still to be handed over. */
export async function openOrders(
  from: Prisma.TransactionClient,
  ids: readonly string[],
): Promise<{ id: string; number: number }[]> {
  const rows = await from.specialOrder.findMany({
    where: { collectorId: { in: [...ids] }, endedAt: null },
    select: {
      ...{ id: true, number: true, quantity: true },
      saleLines: { where: { kind: 'piece' }, select: { quantity: true } },
    },
    orderBy: { number: 'asc' },
  });
  return rows.filter(({ quantity, saleLines }) => {
    const handedOver = saleLines.reduce((sum, line) => sum + line.quantity, 0);
    return handedOver < quantity;
  });
}

async function openPieces(
  from: Prisma.TransactionClient,
  { ids, at, zone }: Of,
): Promise<OpenThing[]> {
  const collectorId = { in: [...ids] };
  const [slips, waiting, days, galleries] = await Promise.all([
    from.slip.findMany({
      where: { collectorId, saleId: null, thrownAwayAt: null },
      select: { asideAs: true },
    }),
    from.toCollect.findMany({
      where: { collectedAt: null, saleLine: { sale: { collectorId } } },
      select: { saleLine: { select: { sale: { select: { number: true } } } } },
    }),
    from.appointment.findMany({
      where: { commission: { collectorId }, calledOffAt: null, endsAt: { gt: at } },
      select: { startsAt: true },
      orderBy: { startsAt: 'asc' },
    }),
    from.consignee.findMany({
      where: { collectorId, endedOn: null },
      select: { collector: { select: { name: true } } },
    }),
  ]);
  const receipts = waiting.map(({ saleLine }) => String(saleLine.sale.number));
  const daysTold = days.map(({ startsAt }) => formatDay(dayOf(startsAt, zone), 'short'));
  return [
    ...named(
      'slip',
      slips.map(({ asideAs }) => asideAs ?? 'being written'),
    ),
    ...named('to_collect', [...new Set(receipts)]),
    ...named('day', daysTold),
    ...named(
      'gallery',
      galleries.map(({ collector }) => collector.name),
    ),
  ];
}

const sumRow = z.object({ accountCode: z.string(), cents: z.bigint() });

async function openMoney(from: Prisma.TransactionClient, { ids }: Of): Promise<OpenThing[]> {
  const credits = await from.credit.findMany({
    where: { collectorId: { in: [...ids] }, balanceCents: { gt: 0n } },
    select: { code: true },
    orderBy: { code: 'asc' },
  });
  const found = await from.$queryRaw`
    SELECT posting."accountCode", sum(posting."amountCents")::bigint AS cents
    FROM "Posting" posting
    LEFT JOIN "Commission" commission ON commission.id = posting."commissionId"
    LEFT JOIN "Layaway" layaway ON layaway.id = posting."layawayId"
    LEFT JOIN "SpecialOrder" special ON special.id = posting."orderId"
    WHERE posting."accountCode" = ANY(${[owedByThem, ...heldForThem]}::text[])
      AND coalesce(posting."collectorId", commission."collectorId", layaway."collectorId",
        special."collectorId") = ANY(${[...ids]}::uuid[])
    GROUP BY posting."accountCode", posting."commissionId", posting."layawayId", posting."orderId"
    HAVING sum(posting."amountCents") <> 0`;
  const sums = z.array(sumRow).parse(found);
  const owing = sums.filter(({ cents }) => cents > 0n).reduce((sum, row) => sum + row.cents, 0n);
  const owed = sums.filter(({ cents }) => cents < 0n).reduce((sum, row) => sum - row.cents, 0n);
  return [
    ...named(
      'credit',
      credits.map(({ code }) => code),
    ),
    ...(owing > 0n ? [{ kind: 'they_owe' as const, cents: owing }] : []),
    ...(owed > 0n ? [{ kind: 'we_owe' as const, cents: owed }] : []),
  ];
}
