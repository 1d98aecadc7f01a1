import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { EndCommissionInput, HandOverInput } from '@/lib/commissions/input/course';
import { paidCents } from '@/lib/commissions/rules/facts';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { isFinished } from '@/lib/commissions/rules/course/standing';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { readTaxParts } from '@/lib/sales/reads';
import { decideCommissionSale, type SaleDecision } from '@/lib/sales/rules';
import { recordSales } from '@/lib/sales/writes/record-sales';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from './carry-out';

/** A hand-over to write down: who signs, on which day. */
export type HandOverToWrite = { commissionId: string; signedBy: string; handedOn: Day };

/** The receipt that the hand-over made. */
export type HandedOver = {
  receiptNumber: number;
  totalCents: string;
  commissionNumber: number;
};

/**
 * Hands the piece over: it is the collector's, and only now it is earned. What was paid before is
 * used up; the rest is owed. Tax is charged at the site's rates on that day.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, handed over, a day to come, not agreed yet, a day before the last payment, a job that is
 *   not finished, no tax rate for the site, more paid than it comes to
 * @source OpenStax, Principles of Accounting, volume 1, section 12.2
 */
export async function handOver(
  doer: Doer,
  input: HandOverInput,
): Promise<Result<HandedOver, AnyRefusal>> {
  const { requestKey, ...signed } = input;
  const command = {
    name: 'handOver',
    permission: 'commissions.hand_over',
    key: requestKey,
    input: signed,
  } as const;
  return carryOut(doer, command, (tx) => addHandOver(tx, doer, signed));
}

/** The step of {@link handOver}: joins the caller's transaction, asks nobody for leave. */
export async function addHandOver(
  tx: Tx,
  doer: Doer,
  signed: HandOverToWrite,
): Promise<Result<HandedOver, CommissionRefusal>> {
  const found = await findOpen(tx, doer, signed.commissionId);
  if (!found.ok) return found;
  const refusal = refusalToHandOver(found.value, signed.handedOn);
  if (refusal) return refuse(refusal);
  const decided = await decideSaleOf(tx, found.value, signed.handedOn);
  if (!decided.ok) return decided;

  const { commissionId, signedBy, handedOn } = signed;
  const sale = await recordSaleOf(tx, doer, {
    found: found.value,
    decision: decided.value,
    handedOn,
  });
  await tx.handOver.create({
    data: {
      ...{ commissionId, signedBy, saleId: sale.saleId, at: doer.at },
      handedOn: dateFromDay(handedOn),
      recordedById: doer.actor.id,
    },
    select: { commissionId: true },
  });
  const { totalCents } = decided.value;
  const facts = { receiptNumber: sale.number, totalCents, signedBy, handedOn };
  await tellHistory(tx, doer, { commissionId, did: 'handed it over', facts });
  return ok({
    receiptNumber: sale.number,
    totalCents: totalCents.toString(),
    commissionNumber: found.value.number,
  });
}

function refusalToHandOver(found: FoundCommission, handedOn: Day): CommissionRefusal | null {
  const { facts, today } = found;
  if (handedOn > today) return { code: 'day_to_come', on: handedOn };
  if (!facts.agreement) return { code: 'not_agreed_yet' };
  const receivedOn = facts.payments.at(-1)?.receivedOn;
  if (receivedOn !== undefined && handedOn < receivedOn) {
    return { code: 'older_than_last_payment', receivedOn };
  }
  const unfinished = facts.jobs.find((job) => !isFinished(job));
  return unfinished ? { code: 'job_not_finished', jobNumber: unfinished.number } : null;
}

async function decideSaleOf(
  tx: Tx,
  found: FoundCommission,
  handedOn: Day,
): Promise<Result<SaleDecision, CommissionRefusal>> {
  const { facts, taxPlaceId, gallery, number, title } = found;
  invariant(facts.agreement && taxPlaceId, 'What is handed over was agreed.');
  const { name, parts } = await readTaxParts(taxPlaceId, handedOn, tx);
  if (parts.length === 0) {
    return refuse({ code: 'no_tax_rate_for_site', place: name, on: handedOn });
  }
  const { priceCents } = facts.agreement;
  const what = `Commission ${number}`;
  const commission = { title, what, priceCents, taxable: true, paidCents: paidCents(facts) };
  const decided = decideCommissionSale(commission, parts, gallery.roundTaxBy);
  return decided.ok ? decided : refuse({ ...decided.refusal, code: 'paid_above_total' });
}

async function recordSaleOf(
  tx: Tx,
  doer: Doer,
  made: { found: FoundCommission; decision: SaleDecision; handedOn: Day },
) {
  const { found, decision, handedOn } = made;
  invariant(found.taxPlaceId, 'What is handed over was agreed for a place.');
  const [sale] = await recordSales(tx, doer, [
    {
      ...decision,
      channel: 'commission',
      placeId: found.gallery.counterId,
      taxPlaceId: found.taxPlaceId,
      collectorId: found.collectorId,
      soldOn: handedOn,
      commissionId: found.id,
    },
  ]);
  invariant(sale, 'A hand-over is one sale.');
  return sale;
}

/** What is held for the collector after an early end, in cents as text. */
export type EndedEarly = { heldCents: string; commissionNumber: number };

/** An early end to write down, and why. */
export type EndToWrite = { commissionId: string; why: string; endedOn: Day };

/**
 * Ends a commission before it is handed over. Deposits stay a debt until the owner decides.
 *
 * @returns what is held for the collector, in cents as text; refuses, in this order: not allowed, a
 *   key used for something else, unknown, ended early, handed over, a day to come
 */
export async function endCommission(
  doer: Doer,
  input: EndCommissionInput,
): Promise<Result<EndedEarly, AnyRefusal>> {
  const { requestKey, ...end } = input;
  const command = {
    name: 'endCommission',
    permission: 'commissions.end',
    key: requestKey,
    input: end,
  } as const;
  return carryOut(doer, command, (tx) => addEnd(tx, doer, end));
}

/** The step of {@link endCommission}: joins the caller's transaction, asks nobody for leave. */
export async function addEnd(
  tx: Tx,
  doer: Doer,
  end: EndToWrite,
): Promise<Result<EndedEarly, CommissionRefusal>> {
  const found = await findOpen(tx, doer, end.commissionId);
  if (!found.ok) return found;
  const { commissionId, why, endedOn } = end;
  if (endedOn > found.value.today) return refuse({ code: 'day_to_come', on: endedOn });
  await tx.commissionEnding.create({
    data: {
      ...{ commissionId, why, staffId: doer.actor.id, at: doer.at },
      endedOn: dateFromDay(endedOn),
    },
    select: { commissionId: true },
  });
  const heldCents = paidCents(found.value.facts);
  const did = 'ended the commission early';
  await tellHistory(tx, doer, { commissionId, did, facts: { why, endedOn, heldCents } });
  return ok({ heldCents: heldCents.toString(), commissionNumber: found.value.number });
}
