import 'server-only';
import { staffIdOf, type AnyDoer, type Doer } from '@/lib/access/rules';
import type {
  OfferChangeInput,
  SignChangeOrderInput,
} from '@/lib/commissions/input/agreement/agreement';
import { readCommissionTotal } from '@/lib/commissions/reads/agreement/total';
import {
  changeBody,
  isOvertaken,
  refusalToTakeOff,
} from '@/lib/commissions/rules/agreement/change';
import { paidCents, type PlanEvent } from '@/lib/commissions/rules/facts';
import { standing } from '@/lib/commissions/rules/course/standing';
import { standingSentence } from '@/lib/commissions/rules/course/sentences';
import type { CommissionLineKind } from '@/lib/commissions/rules/proposal/lines';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from '@/lib/commissions/writes/carry-out';
import { sha256Of } from '@/lib/commissions/reads/content';
import {
  addSignature,
  readySignature,
  type ReadySignature,
} from '@/lib/commissions/writes/signature';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { currencyNamed, type Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** A change order by its number. */
export type ChangeActed = { changeOrderId: string; number: number; commissionNumber: number };

/** A change to write down; cents before tax, below zero takes off. */
export type ChangeToOffer = {
  commissionId: string;
  words: string;
  why: string;
  askedBy: string;
  kind: CommissionLineKind;
  priceCents: Cents;
  dueEvent: PlanEvent | null;
  promisedAfter: Day | null;
  changeAskedId?: string;
};

/**
 * Writes a change order down; it counts once it is signed.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, not agreed yet, a promised day that is past, a whole of nothing, a whole below what
 *   was paid
 */
export async function offerChange(
  doer: Doer,
  input: OfferChangeInput,
): Promise<Result<ChangeActed, AnyRefusal>> {
  const { requestKey, ...change } = input;
  const command = {
    name: 'offerChange',
    permission: 'commissions.agree',
    key: requestKey,
    input: change,
  } as const;
  return carryOut(doer, command, (tx) => addChange(tx, doer, change));
}

/** The step of {@link offerChange}: joins the caller's transaction, asks nobody for leave. */
export async function addChange(
  tx: Tx,
  doer: AnyDoer,
  change: ChangeToOffer,
): Promise<Result<ChangeActed, CommissionRefusal>> {
  const { commissionId, promisedAfter } = change;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const { facts, today, number: commissionNumber } = found.value;
  if (!facts.agreement) return refuse({ code: 'not_agreed_yet' });
  if (promisedAfter !== null && promisedAfter < today) {
    return refuse({ code: 'change_day_is_past', on: promisedAfter });
  }
  const below = await refusalToLess(tx, found.value, change);
  if (below) return refuse(below);
  const number = facts.changeOrders.length + 1;
  const body = await bodyOf(tx, found.value, { change, number });
  const { id } = await tx.changeOrder.create({
    data: {
      ...change,
      ...{ number, body, contentSha256: sha256Of(body), stage: stageOf(found.value) },
      promisedBefore: facts.agreement.promisedOn && dateFromDay(facts.agreement.promisedOn),
      promisedAfter: promisedAfter && dateFromDay(promisedAfter),
      offeredById: staffIdOf(doer),
      offeredOn: dateFromDay(today),
      at: doer.at,
    },
    select: { id: true },
  });
  const did = `wrote change order ${number}`;
  const told = { name: change.words, priceCents: change.priceCents };
  await tellHistory(tx, doer, { commissionId, did, facts: told });
  return ok({ changeOrderId: id, number, commissionNumber });
}

async function refusalToLess(
  tx: Tx,
  found: FoundCommission,
  { kind, priceCents }: Pick<ChangeToOffer, 'kind' | 'priceCents'>,
): Promise<CommissionRefusal | null> {
  if (priceCents >= 0n) return null;
  const totalCents = await readCommissionTotal(tx, found, { kind, priceCents });
  return refusalToTakeOff(totalCents, paidCents(found.facts));
}

function stageOf({ facts, today, gallery }: FoundCommission): string {
  const currency = currencyNamed(gallery.currency);
  const telling = { today, seesMoney: false, currency };
  return standingSentence(standing(facts, today), telling).slice(0, 200);
}

async function bodyOf(
  tx: Tx,
  found: FoundCommission,
  { change, number }: { change: ChangeToOffer; number: number },
): Promise<string> {
  const { name: collector } = await tx.collector.findUniqueOrThrow({
    where: { id: found.collectorId },
    select: { name: true },
  });
  const said = {
    ...change,
    ...{ commissionNumber: found.number, number, title: found.title, collector },
    stage: stageOf(found),
    priceBeforeCents: found.facts.agreement?.priceCents ?? 0n,
    promisedBefore: found.facts.agreement?.promisedOn ?? null,
  };
  return changeBody(said, { currency: currencyNamed(found.gallery.currency) });
}

/** A change order to sign, by the hash of the words that were looked at. */
export type ChangeToSign = {
  commissionId: string;
  changeOrderId: string;
  contentSha256: string;
  signature: ReadySignature;
  device: string;
};

/**
 * Signs a change order: from now on it counts.
 *
 * @param device what their browser says it is; empty for a paper
 * @returns refuses, in this order: not allowed, a signature that cannot be read, a key used for
 *   something else, unknown, ended early, handed over, no such change, withdrawn, signed already,
 *   other words than were looked at, a price or a day that another change has moved since, a whole
 *   of nothing, a whole below what was paid
 */
export async function signChangeOrder(
  doer: AnyDoer,
  input: SignChangeOrderInput,
  device = '',
): Promise<Result<ChangeActed, AnyRefusal>> {
  const signature = await readySignature(input);
  if (!signature.ok) return signature;
  const { requestKey, commissionId, changeOrderId, contentSha256 } = input;
  const said = { commissionId, changeOrderId, contentSha256 };
  const command = {
    name: 'signChangeOrder',
    permission: 'commissions.agree',
    key: requestKey,
    input: { ...said, signedName: input.signedName },
    onTheirPage: { commissionId },
  } as const;
  const change = { ...said, signature: signature.value, device };
  return carryOut(doer, command, (tx) => addSignedChange(tx, doer, change));
}

/** The step of {@link signChangeOrder}: joins the caller's transaction, asks nobody for leave. */
export async function addSignedChange(
  tx: Tx,
  doer: AnyDoer,
  change: ChangeToSign,
): Promise<Result<ChangeActed, CommissionRefusal>> {
  const { commissionId, changeOrderId, contentSha256, signature, device } = change;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const order = await findChange(tx, commissionId, changeOrderId);
  if (!order) return refuse({ code: 'unknown_change' });
  if (order.withdrawn) return refuse({ code: 'change_withdrawn' });
  if (order.signed) {
    return refuse({ code: 'change_signed_already', signedOn: dayFromDate(order.signed.signedOn) });
  }
  if (order.contentSha256 !== contentSha256) return refuse({ code: 'paper_changed' });
  const { facts: stands, gallery } = found.value;
  const currency = currencyNamed(gallery.currency);
  if (!stands.agreement || isOvertaken(order, stands.agreement, { currency })) {
    return refuse({ code: 'change_overtaken' });
  }
  const below = await refusalToLess(tx, found.value, order);
  if (below) return refuse(below);

  const statement = 'I have read this change order and sign it.';
  const signed = { commissionId, contentSha256, statement, device };
  const signatureId = await addSignature(tx, doer, signature, signed);
  const signedOn = dateFromDay(found.value.today);
  await tx.changeOrderSigned.create({
    data: { changeOrderId, signatureId, signedOn, at: doer.at },
    select: { changeOrderId: true },
  });
  const { number, priceCents } = order;
  const facts = { agreedBy: signature.signedName, priceCents, sha256: contentSha256 };
  await tellHistory(tx, doer, { commissionId, did: `signed change order ${number}`, facts });
  return ok({ changeOrderId, number, commissionNumber: found.value.number });
}

/** A change order of a commission as a command finds it; null for none. */
export async function findChange(tx: Tx, commissionId: string, id: string) {
  const row = await tx.changeOrder.findFirst({
    where: { id, commissionId },
    select: {
      ...{ number: true, kind: true, priceCents: true, dueEvent: true, promisedAfter: true },
      ...{ body: true, contentSha256: true },
      signed: { select: { signedOn: true } },
      withdrawn: { select: { at: true } },
    },
  });
  return row && { ...row, promisedAfter: row.promisedAfter && dayFromDate(row.promisedAfter) };
}
