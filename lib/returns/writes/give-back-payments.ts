import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { readSoldSale } from '../reads/sold-sale';
import { decideReturn, type DecidedReturn } from '../rules';
import type { ReturnRefusal } from '../rules/refusals';
import { leftOf, type SoldSale } from '../rules/sold';
import { recordReturn, type RecordedReturn } from './record-return';

/** Whose money it is: the lines of slips, or all that a layaway or a special order was paid. */
export type WhosePayments =
  { saleLineIds: readonly string[] } | { layawayId: string } | { orderId: string };

/** Money that was paid for later, and is given back because its paper ends. */
export type PaymentsBack = WhosePayments & {
  /** What the gallery keeps of it, in cents; it is taken from the oldest payments first. */
  keepCents: Cents;
  reason: string;
  how: 'same_way' | 'store_credit';
};

/** What was given back and what was kept, with the returns that say so. */
export type PaymentsGivenBack = {
  returns: { returnId: string; number: number }[];
  givenCents: Cents;
  keptCents: Cents;
  credit: { creditId: string; code: string } | null;
};

/**
 * Gives back the money of a layaway or an order that ends, as returns of its payments, the oldest
 * first; joins the caller's transaction. The caller ends the paper and frees its pieces.
 *
 * @returns refuses, in this order: nothing paid, more kept than was paid, money that was used
 *   already, and what {@link decideReturn} refuses
 */
export async function giveBackPayments(
  tx: Tx,
  doer: Doer,
  asked: PaymentsBack,
): Promise<Result<PaymentsGivenBack, ReturnRefusal>> {
  const lineIds = await paymentLines(tx, asked);
  const sales = await salesOf(tx, lineIds);
  if (sales.length === 0) return refuse({ code: 'no_payments' });
  const paidCents = sumCents(sales.map((sale) => leftCents(sale, lineIds)));
  const { keepCents } = asked;
  if (keepCents > paidCents) {
    return refuse({ code: 'fee_above_price', feeCents: keepCents, netCents: paidCents });
  }
  const heldCents = await heldFor(tx, asked);
  if (heldCents !== null && heldCents < paidCents) {
    return refuse({ code: 'deposit_was_used', leftCents: heldCents, wantedCents: paidCents });
  }
  return giveBackEach(tx, doer, { asked, sales, lineIds });
}

type Payments = { asked: PaymentsBack; sales: readonly SoldSale[]; lineIds: ReadonlySet<string> };

async function giveBackEach(
  tx: Tx,
  doer: Doer,
  { asked, sales, lineIds }: Payments,
): Promise<Result<PaymentsGivenBack, ReturnRefusal>> {
  const { timeZone } = await getGallery(tx);
  const returnedOn = dayOf(doer.at, timeZone);
  let toKeep = asked.keepCents;
  let credit: RecordedReturn['credit'] = null;
  const decided: DecidedReturn[] = [];
  const returns: PaymentsGivenBack['returns'] = [];
  for (const sale of sales) {
    const cents = leastOf(toKeep, leftCents(sale, lineIds));
    const one = decideReturn(
      sale,
      {
        ...{ kind: 'returned', reason: asked.reason, how: asked.how },
        ...{ lines: linesBack(sale, lineIds), fee: { cents }, refunds: new Map() },
      },
      { returnedOn, returnDays: 0, mayGoBeyond: true, endsPaper: true },
    );
    if (!one.ok) return one;
    const recorded = await recordReturn(tx, doer, one.value, credit);
    credit = recorded.credit ?? credit;
    toKeep -= cents;
    decided.push(one.value);
    returns.push({ returnId: recorded.returnId, number: recorded.number });
  }
  return ok({
    returns,
    givenCents: sumCents(decided.map((each) => each.totalCents)),
    keptCents: sumCents(decided.map((each) => each.feeCents)),
    credit,
  });
}

/** Payments that are still there: one line of a slip each, not given back before. */
async function paymentLines(tx: Tx, asked: PaymentsBack): Promise<ReadonlySet<string>> {
  const rows = await tx.saleLine.findMany({
    where: { ...whichLines(asked), returned: { none: {} } },
    select: { id: true },
  });
  return new Set(rows.map((row) => row.id));
}

function whichLines(asked: PaymentsBack) {
  if ('saleLineIds' in asked) return { id: { in: [...asked.saleLineIds] } };
  if ('layawayId' in asked) return { layawayId: asked.layawayId };
  return { orderId: asked.orderId, kind: 'order_deposit' as const };
}

async function salesOf(tx: Tx, lineIds: ReadonlySet<string>): Promise<SoldSale[]> {
  const rows = await tx.sale.findMany({
    where: { lines: { some: { id: { in: [...lineIds] } } } },
    orderBy: { number: 'asc' },
    select: { id: true },
  });
  const sales: SoldSale[] = [];
  for (const { id } of rows) {
    const sale = await readSoldSale(tx, { id });
    if (sale) sales.push(sale);
  }
  return sales;
}

function linesBack(sale: SoldSale, lineIds: ReadonlySet<string>) {
  return sale.lines
    .filter((line) => lineIds.has(line.id))
    .map((line) => ({
      ...{ lineId: line.id, pieces: leftOf(line), numbers: [], flaw: '' },
      to: 'nothing' as const,
    }));
}

function leftCents(sale: SoldSale, lineIds: ReadonlySet<string>): Cents {
  return sumCents(
    sale.lines
      .filter((line) => lineIds.has(line.id))
      .map((line) => line.netCents - line.back.netCents),
  );
}

/** What is still held for a layaway or an order; null when single lines are given back. */
async function heldFor(tx: Tx, asked: PaymentsBack): Promise<Cents | null> {
  if ('saleLineIds' in asked) return null;
  const rows =
    'layawayId' in asked
      ? await tx.$queryRaw<{ cents: bigint }[]>`
          SELECT layaway_money(${asked.layawayId}::uuid)::bigint AS cents`
      : await tx.$queryRaw<{ cents: bigint }[]>`
          SELECT order_money(${asked.orderId}::uuid)::bigint AS cents`;
  return rows[0]?.cents ?? 0n;
}

function leastOf(one: Cents, other: Cents): Cents {
  return one < other ? one : other;
}
