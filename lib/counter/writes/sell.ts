import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { addPayment } from '@/lib/commissions/writes/money';
import { dateFromDay } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { readLastSold } from '@/lib/sales/reads';
import type { CreditsKnown, TenderOffered } from '@/lib/sales/rules/tenders';
import { recordReferralFee } from '@/lib/sales/writes/referral-fee';
import { recordSales, type RecordedSale, type SaleToRecord } from '@/lib/sales/writes/record-sales';
import { readCredit } from '@/lib/vouchers/reads';
import { openCredit } from '@/lib/vouchers/writes';
import type { SlipFacts } from '../reads/facts';
import type { KeptSlip } from '../reads/slip-row';
import { mostMoneyOf, type SlipDecision } from '../rules/decide';
import type { CounterFacts } from '../rules/facts';
import type { CounterRefusal } from '../rules/refusals';

/** A slip on its way to a receipt: what was decided of it, and where it is sold. */
export type SlipSold = SlipDecision &
  Omit<SlipFacts, 'facts'> & {
    slip: KeptSlip;
    facts: CounterFacts;
  };

/** The vouchers that somebody pays with, as they are now. */
export async function readCreditsOffered(
  tx: Tx,
  tenders: readonly TenderOffered[],
  on: CounterFacts['on'],
): Promise<CreditsKnown> {
  const typed = tenders.flatMap((tender) => (tender.kind === 'credit' ? [tender.code] : []));
  const byTyped = new Map<string, NonNullable<Awaited<ReturnType<typeof readCredit>>>>();
  for (const code of new Set(typed)) {
    const credit = await readCredit(tx, code);
    if (credit) byTyped.set(code, credit);
  }
  return { on, byTyped };
}

/** Adds to a shortage when the last one went, and by whom. */
export async function withLastSold(
  tx: Tx,
  refusal: CounterRefusal,
  facts: CounterFacts,
): Promise<CounterRefusal> {
  if (refusal.code !== 'not_enough_pieces') return refusal;
  const short = [...facts.pieces.values()].find((piece) => piece.sku === refusal.sku);
  if (!short) return refusal;
  const last = await readLastSold(tx, [short.skuId]);
  return { ...refusal, last: last.get(short.skuId) ?? null };
}

/**
 * Writes everything that selling a slip is: vouchers opened, the sale itself, the payment for a
 * commission, the designer's fee, what still hangs here. Joins the caller's transaction.
 *
 * @returns refuses what a commission refuses of its payment; the caller rolls back then
 */
export async function recordSlip(
  tx: Tx,
  doer: Doer,
  sold: SlipSold,
): Promise<Result<RecordedSale, CounterRefusal>> {
  const lines = await openVouchers(tx, doer, sold);
  const [sale] = await recordSales(tx, doer, [saleOf(sold, lines)]);
  invariant(sale, 'A sale that was decided is recorded.');
  const paid = await payCommission(tx, doer, sold, sale);
  if (!paid.ok) return paid;
  await payDesigner(tx, doer, sold, sale);
  await leaveHanging(tx, sold, sale);
  return ok(sale);
}

async function openVouchers(tx: Tx, doer: Doer, { sale, slip }: SlipSold) {
  const lines: SaleToRecord['lines'] = [];
  for (const line of sale.lines) {
    if (line.kind !== 'voucher') {
      lines.push(line);
      continue;
    }
    const { collectorId } = slip;
    const { creditId } = await openCredit(tx, doer, {
      ...{ kind: 'voucher', collectorId, note: line.what, expiresOn: null },
    });
    lines.push({ ...line, creditId });
  }
  return lines;
}

function saleOf(sold: SlipSold, lines: SaleToRecord['lines']): SaleToRecord {
  const { slip, sale, facts, place, taxPlaceId, reckoned } = sold;
  const { delivery, gift, referredById } = slip.content;
  const sent = delivery.way === 'sent' ? 'shipped' : 'counter';
  return {
    ...{ ...sale, lines, taxPlaceId, referredById },
    channel: place.fairId === null ? sent : 'fair',
    placeId: place.placeId,
    fairId: place.fairId,
    collectorId: slip.collectorId,
    soldOn: facts.on,
    delivery: delivery.way,
    deliverTo: delivery.way === 'taken' ? '' : delivery.to,
    exemptWhy: reckoned.exemptWhy,
    certificateId: reckoned.certificateId,
    giftTo: gift?.to ?? '',
    giftWords: gift?.words ?? '',
  };
}

async function payCommission(
  tx: Tx,
  doer: Doer,
  { slip, sale }: SlipSold,
  { entryId }: RecordedSale,
): Promise<Result<true, CounterRefusal>> {
  const line = slip.content.lines.find((each) => each.kind === 'instalment');
  const money = mostMoneyOf(sale.tenders);
  if (!line || !money) return ok(true);
  const { commissionId, instalmentId, cents: amountCents } = line;
  const { kind, reference } = money;
  const paidBy = await nameOf(tx, slip.collectorId);
  const payment = { commissionId, instalmentId, amountCents, kind, reference, paidBy };
  const taken = await addPayment(tx, doer, payment, entryId);
  return taken.ok ? ok(true) : refuse({ code: 'payment_refused', refusal: taken.refusal });
}

async function nameOf(tx: Tx, collectorId: string | null): Promise<string> {
  if (collectorId === null) return 'Paid at the counter';
  const collector = await tx.collector.findUnique({
    where: { id: collectorId },
    select: { name: true },
  });
  return collector?.name ?? 'Paid at the counter';
}

async function payDesigner(tx: Tx, doer: Doer, sold: SlipSold, sale: RecordedSale): Promise<void> {
  const { facts, reckoned } = sold;
  const { referrer, on } = facts;
  if (!referrer?.terms) return;
  const { saleId, number: saleNumber } = sale;
  const { percent } = referrer.terms;
  const netCents = reckoned.piecesCents;
  await recordReferralFee(tx, doer, {
    ...{ saleId, saleNumber, collectorId: referrer.id, percent, netCents, on },
  });
}

async function leaveHanging(tx: Tx, sold: SlipSold, { lineIds }: RecordedSale): Promise<void> {
  const { collect, delivery } = sold.slip.content;
  if (!collect || delivery.way !== 'taken') return;
  const pieces = lineIds.filter((_id, at) => sold.sale.lines[at]?.kind === 'piece');
  await tx.toCollect.createMany({
    data: pieces.map((saleLineId) => ({
      ...{ saleLineId, placeId: sold.place.placeId, note: collect.note },
      untilOn: dateFromDay(collect.untilOn),
    })),
  });
}
