import 'server-only';
import type { Prisma } from '@/generated/prisma/client';

const orderBy = { number: 'asc' } as const;

/** What of a sale is about the buyer; what the pieces cost the gallery is not. */
const saleSelect = {
  ...{ number: true, channel: true, soldOn: true, soldAt: true, delivery: true },
  ...{ deliverTo: true, exemptWhy: true, giftTo: true, giftWords: true },
  ...{ netCents: true, taxCents: true, totalCents: true },
  lines: {
    select: {
      ...{ kind: true, title: true, what: true, quantity: true, unitPriceCents: true },
      ...{ discountCents: true, netCents: true, taxCents: true },
      discounts: { select: { kind: true, reason: true, amountCents: true } },
      toCollect: { select: { untilOn: true, note: true, collectedAt: true } },
    },
    orderBy: { position: 'asc' },
  },
  taxes: { select: { authority: true, ratePercent: true, taxableCents: true, taxCents: true } },
  tenders: {
    select: { kind: true, amountCents: true, givenCents: true, reference: true },
    orderBy: { position: 'asc' },
  },
  settlements: {
    select: { number: true, receivedOn: true, amountCents: true, kind: true, reference: true },
  },
  returns: {
    select: {
      ...{ number: true, kind: true, reason: true, returnedOn: true, totalCents: true },
      ...{ netCents: true, taxCents: true, feeCents: true },
      lines: { select: { quantity: true, netCents: true, saleLine: { select: { title: true } } } },
      refunds: { select: { kind: true, amountCents: true, reference: true } },
    },
    orderBy,
  },
  proof: { select: { carrier: true, number: true, sentOn: true, arrivedOn: true } },
} as const satisfies Prisma.SaleSelect;

/** What somebody bought and brought back, what they are owed and owe, and whom they brought. */
export async function readSalesKept(from: Prisma.TransactionClient, ids: readonly string[]) {
  const theirs = { collectorId: { in: [...ids] } };
  const [sales, referredSales, referralFees, credits, slips, postings] = await Promise.all([
    from.sale.findMany({ where: theirs, select: saleSelect, orderBy }),
    from.sale.findMany({
      where: { referredById: { in: [...ids] } },
      select: { number: true, soldOn: true },
      orderBy,
    }),
    from.referralFee.findMany({
      where: theirs,
      select: {
        percent: true,
        amountCents: true,
        paidOn: true,
        sale: { select: { number: true } },
      },
      orderBy: { id: 'asc' },
    }),
    from.credit.findMany({
      where: theirs,
      include: { movements: { select: { amountCents: true, at: true } } },
      orderBy: { createdAt: 'asc' },
    }),
    from.slip.findMany({
      where: { ...theirs, saleId: null },
      select: { content: true, asideAs: true, openedAt: true, thrownAwayAt: true },
      orderBy: { openedAt: 'asc' },
    }),
    from.posting.findMany({
      where: theirs,
      select: {
        ...{ accountCode: true, amountCents: true },
        entry: { select: { number: true, on: true, memo: true } },
      },
      orderBy: { id: 'asc' },
    }),
  ]);
  return { sales, referredSales, referralFees, credits, slips, postings };
}
