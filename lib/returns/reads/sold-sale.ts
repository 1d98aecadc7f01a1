import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate } from '@/lib/dates/rules';
import { accounts } from '@/lib/ledger/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import type { SoldLine, SoldSale, SoldTender } from '../rules/sold';

const columns = {
  ...{ id: true, number: true, soldOn: true, collectorId: true },
  handOver: { select: { commissionId: true } },
  lines: {
    orderBy: { position: 'asc' },
    select: {
      ...{ id: true, kind: true, skuId: true, title: true, what: true, quantity: true },
      ...{ netCents: true, taxCents: true, unitCostCents: true },
      ...{ commissionId: true, orderId: true, layawayId: true, creditId: true },
      sku: { select: { grade: true, flaw: true } },
      credit: { select: { balanceCents: true } },
      movements: { where: { reason: 'sold' }, select: { editionNumber: true } },
      returned: {
        select: { quantity: true, netCents: true, taxCents: true, editionNumber: true },
      },
    },
  },
  taxes: { orderBy: { authority: 'asc' }, select: { authority: true, taxCents: true } },
  tenders: {
    orderBy: { position: 'asc' },
    select: {
      ...{ id: true, kind: true, amountCents: true, reference: true },
      ...{ creditId: true, orderId: true, layawayId: true },
      refunds: { select: { amountCents: true } },
    },
  },
  returns: { select: { taxes: { select: { authority: true, taxCents: true } } } },
  settlements: { select: { amountCents: true } },
  referralFee: { select: { collectorId: true, amountCents: true } },
} as const satisfies Prisma.SaleSelect;

type Row = Prisma.SaleGetPayload<{ select: typeof columns }>;

/** Which sale: by its id, or by its receipt's number. */
export type WhichSale = { id: string } | { number: number };

/**
 * A sale with everything that answered it, as it is at this moment; null when there is none.
 *
 * The caller has asked whether the person may know it.
 */
export async function readSoldSale(
  from: Prisma.TransactionClient,
  which: WhichSale,
): Promise<SoldSale | null> {
  const sale = await from.sale.findUnique({ where: which, select: columns });
  if (!sale) return null;
  const { id, number, soldOn, collectorId, handOver, returns, settlements } = sale;
  const taxBack = returns.flatMap((each) => each.taxes);
  const settledCents = handOver
    ? await settledOfCommission(from, { handOver, tenders: sale.tenders })
    : sumCents(settlements.map((each) => each.amountCents));
  return {
    ...{ id, number, collectorId, soldOn: dayFromDate(soldOn) },
    commissionId: handOver?.commissionId ?? commissionOf(sale.lines),
    lines: sale.lines.map(lineOf),
    taxes: sale.taxes.map((tax) => ({ ...tax, backCents: backTo(tax.authority, taxBack) })),
    tenders: sale.tenders.map((tender) => tenderOf(tender, settledCents)),
    referral: sale.referralFee,
    answeredTimes: returns.length,
  };
}

/** Of what a hand-over wrote down as owed: what came in for it since, by the commission's own slips. */
async function settledOfCommission(
  from: Prisma.TransactionClient,
  { handOver, tenders }: { handOver: { commissionId: string }; tenders: Row['tenders'] },
): Promise<Cents> {
  const onAccount = tenders.filter((tender) => tender.kind === 'on_account');
  const wasOwed = sumCents(onAccount.map((tender) => tender.amountCents));
  const taken = onAccount.flatMap(({ refunds }) => refunds.map((each) => each.amountCents));
  const { commissionId } = handOver;
  const owed = await from.posting.aggregate({
    where: { commissionId, accountCode: accounts.owedByCollectors },
    _sum: { amountCents: true },
  });
  return wasOwed - sumCents(taken) - (owed._sum.amountCents ?? 0n);
}

function commissionOf(lines: Row['lines']): string | null {
  return lines.find((line) => line.kind === 'commission')?.commissionId ?? null;
}

function lineOf(row: Row['lines'][number]): SoldLine {
  const { sku, credit, movements, returned, ...line } = row;
  return {
    ...line,
    finalWhy: finalWhy(row),
    isSecond: sku !== null && sku.grade !== 'first',
    numbers: numbersOf(movements),
    creditBalanceCents: credit?.balanceCents ?? 0n,
    back: {
      quantity: returned.reduce((sum, each) => sum + each.quantity, 0),
      netCents: sumCents(returned.map((each) => each.netCents)),
      taxCents: sumCents(returned.map((each) => each.taxCents)),
      numbers: numbersOf(returned),
    },
  };
}

/** Seconds, what was made to order and commissions are sold for good. */
function finalWhy({ kind, sku, orderId }: Row['lines'][number]): string {
  if (kind === 'commission') return 'it is a commission, made for one place';
  if (kind !== 'piece') return '';
  if (orderId !== null) return 'it was made to order';
  if (!sku || sku.grade === 'first') return '';
  return sku.flaw === '' ? 'it is a second' : `it is a second, with a flaw: ${sku.flaw}`;
}

function tenderOf(row: Row['tenders'][number], settledCents: Cents): SoldTender {
  const { refunds, ...tender } = row;
  return {
    ...tender,
    backCents: sumCents(refunds.map((refund) => refund.amountCents)),
    settledCents: tender.kind === 'on_account' ? settledCents : 0n,
  };
}

function numbersOf(rows: readonly { editionNumber: number | null }[]): number[] {
  return rows.flatMap(({ editionNumber }) => (editionNumber === null ? [] : [editionNumber]));
}

function backTo(authority: string, back: readonly { authority: string; taxCents: Cents }[]): Cents {
  return sumCents(back.filter((tax) => tax.authority === authority).map((tax) => tax.taxCents));
}
