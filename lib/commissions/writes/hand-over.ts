import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { HandOverInput } from '@/lib/commissions/input/course';
import { readTotal, type CommissionTotal } from '@/lib/commissions/reads/agreement/total';
import { referralOf } from '@/lib/commissions/reads/enquiry/referral';
import { taxKindOfLine } from '@/lib/commissions/rules/agreement/tax';
import { isFinished } from '@/lib/commissions/rules/course/standing';
import { paidCents } from '@/lib/commissions/rules/facts';
import { owedBeforeHandOverCents, planDue } from '@/lib/commissions/rules/money/plan';
import type { CommissionLineKind } from '@/lib/commissions/rules/proposal/lines';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { sumCents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import {
  decideCommissionSale,
  type CommissionSaleLine,
  type SaleDecision,
} from '@/lib/sales/rules';
import { recordReferralFee } from '@/lib/sales/writes/referral-fee';
import { recordSales } from '@/lib/sales/writes/record-sales';
import {
  addHandOverSignature,
  readyHandOver,
  type HandOverToSign,
} from './agreement/hand-over-sign';
import { releaseBatchesOf } from './colours/release';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from './carry-out';

/** A hand-over to write down: who signs, on which day, what they remark, why it goes unpaid. */
export type HandOverToWrite = {
  commissionId: string;
  signedBy: string;
  handedOn: Day;
  remarks?: string | undefined;
  evenIfOwed?: string | null | undefined;
  /** What stands above the name, and the name; left out where nobody signs. */
  sign?: HandOverToSign | null | undefined;
  /** The work order on which it was signed, and when by its device. */
  byOrder?: { appointmentId: string; signedAt: Date } | undefined;
};

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
 * @param device what their browser says it is; empty for a paper
 * @returns refuses, in this order: not allowed, a signature that cannot be read, a key used for something else, unknown, ended
 *   early, handed over, a day to come, not agreed yet, a day before the last payment, a job that is
 *   not finished, no tax rate for the site, a balance that is still owed and no word why it goes
 * @source OpenStax, Principles of Accounting, volume 1, section 12.2
 */
export async function handOver(
  doer: Doer,
  input: HandOverInput,
  device = '',
): Promise<Result<HandedOver, AnyRefusal>> {
  const { requestKey, ...signed } = input;
  const ready = await readyHandOver(signed.sign, device);
  if (!ready.ok) return ready;
  const command = {
    name: 'handOver',
    permission: 'commissions.hand_over',
    key: requestKey,
    input: signed,
  } as const;
  const handed = { ...signed, sign: ready.value };
  return carryOut(doer, command, (tx) => addHandOver(tx, doer, handed));
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
  const { decision } = decided.value;
  const owedCents = owedBeforeHandOverCents(planDue(found.value.facts, decision.totalCents));
  const evenIfOwed = signed.evenIfOwed ?? null;
  if (owedCents > 0n && evenIfOwed === null) {
    return refuse({ code: 'balance_still_owed', owedCents });
  }
  const handed = { found: found.value, ...decided.value, handedOn: signed.handedOn };
  const sale = await recordSaleOf(tx, doer, handed);
  const { commissionId, signedBy, handedOn, remarks = '', sign, byOrder } = signed;
  const told = { commissionId, handedOn, remarks };
  await tx.handOver.create({
    data: {
      ...{ commissionId, signedBy, saleId: sale.saleId, at: doer.at, remarks },
      evenIfOwed: owedCents > 0n ? evenIfOwed : null,
      handedOn: dateFromDay(handedOn),
      recordedById: doer.actor.id,
      signatureId: sign ? await addHandOverSignature(tx, doer, sign, told) : null,
      ...byOrder,
    },
    select: { commissionId: true },
  });
  await payReferral(tx, doer, handed, sale);
  await releaseBatchesOf(tx, doer, commissionId);
  const { totalCents } = decision;
  const facts = { receiptNumber: sale.number, totalCents, signedBy, handedOn, why: evenIfOwed };
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

type DecidedSale = { decision: SaleDecision; total: CommissionTotal; taxPlaceId: string };

async function decideSaleOf(
  tx: Tx,
  found: FoundCommission,
  handedOn: Day,
): Promise<Result<DecidedSale, CommissionRefusal>> {
  const { id, facts, taxPlaceId, gallery, number, title } = found;
  const roundBy = gallery.roundTaxBy;
  const total = await readTotal(tx, id, { on: handedOn, roundBy });
  invariant(total && taxPlaceId, 'What is handed over was agreed.');
  const { parts, isRegistered, place } = total.tax.setting;
  if (parts.length === 0 && isRegistered && total.tax.exemptWhy === '') {
    return refuse({ code: 'no_tax_rate_for_site', place, on: handedOn });
  }
  const lines = total.lines.map(({ kind, words, amountCents: cents }, at) => ({
    ...{ kind: saleKinds[kind], words, cents, taxKind: taxKindOfLine[kind] },
    taxableCents: total.tax.perLine[at]?.taxableCents ?? 0n,
  }));
  const commission = { title, what: `Commission ${number}`, lines, paidCents: paidCents(facts) };
  const decision = decideCommissionSale(commission, parts, roundBy);
  return ok({ decision, total, taxPlaceId });
}

/** What each line of an agreement is on the receipt. */
const saleKinds: Record<CommissionLineKind, CommissionSaleLine['kind']> = {
  work: 'commission',
  frame: 'commission',
  design_fee: 'design_work',
  crate: 'shipping',
  freight: 'shipping',
  travel: 'installation',
  installation: 'installation',
};

type Handed = DecidedSale & { found: FoundCommission; handedOn: Day };

async function recordSaleOf(tx: Tx, doer: Doer, { found, decision, ...handed }: Handed) {
  const [sale] = await recordSales(tx, doer, [
    {
      ...decision,
      channel: 'commission',
      placeId: found.gallery.counterId,
      taxPlaceId: handed.taxPlaceId,
      collectorId: found.collectorId,
      soldOn: handed.handedOn,
      commissionId: found.id,
      exemptWhy: handed.total.tax.exemptWhy,
    },
  ]);
  invariant(sale, 'A hand-over is one sale.');
  return sale;
}

/** Who brought the collector is owed what was settled, of the work alone. */
async function payReferral(
  tx: Tx,
  doer: Doer,
  { found, total, handedOn }: Handed,
  sale: { saleId: string; number: number },
): Promise<void> {
  const referral = await referralOf(tx, found.id);
  if (!referral) return;
  const work = total.lines.filter(({ kind }) => kind === 'work' || kind === 'frame');
  await recordReferralFee(tx, doer, {
    ...referral,
    ...{ saleId: sale.saleId, saleNumber: sale.number, on: handedOn },
    netCents: sumCents(work.map(({ amountCents }) => amountCents)),
  });
}
