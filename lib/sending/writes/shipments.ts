import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { livingId } from '@/lib/collectors/reads/group';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { ChangeShipmentInput, StartShipmentInput } from '@/lib/sending/input/shipment';
import type { SendingRefusal } from '@/lib/sending/rules/refusals';
import { carryOut, findOpen, tell, type SendingAnswer } from './carry-out';

/** A shipment that was begun, by its number. */
export type Started = { shipmentId: string; number: number };

type ToStart = Omit<StartShipmentInput, 'requestKey'>;
type WhereTo = Omit<ChangeShipmentInput, 'requestKey' | 'shipmentId'>;

/**
 * Begins a shipment: of a commission, of a sale that is sent, or by itself to a person.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, and what
 *   {@link startStep} refuses
 */
export async function startShipment(
  doer: Doer,
  input: StartShipmentInput,
): Promise<SendingAnswer<Started>> {
  return carryOut<Started>(doer, { name: 'startShipment', input }, (tx) =>
    startStep(tx, doer, input),
  );
}

/**
 * The step of {@link startShipment}: joins the caller's transaction, asks nobody for leave.
 *
 * @returns refuses, in this order: no such commission, no such receipt, one that was taken along,
 *   no such collector, and what a place to send to refuses
 */
export async function startStep(
  tx: Tx,
  doer: Doer,
  asked: ToStart,
): Promise<Result<Started, SendingRefusal>> {
  const of = await findWhatFor(tx, asked);
  if (!of.ok) return of;
  const fault = await whereToFault(tx, asked);
  if (fault) return refuse(fault);
  const { id, number } = await tx.shipment.create({
    data: { ...of.value, ...whereToRow(asked), madeById: doer.actor.id, at: doer.at },
    select: { id: true, number: true },
  });
  const shipment = { id, number, commissionId: of.value.commissionId };
  const facts = { how: asked.how, receipt: asked.saleNumber };
  await tell(tx, doer, { shipment, did: 'began a shipment', facts });
  return ok({ shipmentId: id, number });
}

type WhatFor = { commissionId: string | null; saleId: string | null; collectorId: string | null };

async function findWhatFor(
  tx: Tx,
  asked: Pick<ToStart, 'commissionId' | 'saleNumber' | 'collectorId'>,
): Promise<Result<WhatFor, SendingRefusal>> {
  if (asked.commissionId !== null) {
    const where = { id: asked.commissionId };
    const row = await tx.commission.findUnique({ where, select: { collectorId: true } });
    if (!row) return refuse({ code: 'no_such_commission' });
    const collectorId = await livingId(tx, row.collectorId);
    return ok({ commissionId: asked.commissionId, saleId: null, collectorId });
  }
  if (asked.saleNumber !== null) {
    const where = { number: asked.saleNumber };
    const select = { id: true, delivery: true, collectorId: true };
    const sale = await tx.sale.findUnique({ where, select });
    if (!sale) return refuse({ code: 'no_such_receipt' });
    if (sale.delivery === 'taken') return refuse({ code: 'receipt_was_taken_along' });
    const collectorId = sale.collectorId && (await livingId(tx, sale.collectorId));
    return ok({ commissionId: null, saleId: sale.id, collectorId });
  }
  if (asked.collectorId === null)
    return ok({ commissionId: null, saleId: null, collectorId: null });
  const collectorId = await livingId(tx, asked.collectorId);
  if (!collectorId) return refuse({ code: 'no_such_collector' });
  return ok({ commissionId: null, saleId: null, collectorId });
}

async function whereToFault(tx: Tx, whereTo: WhereTo): Promise<SendingRefusal | null> {
  const { how, carrierRuleId, toName, toAddress } = whereTo;
  if (toName === '') return { code: 'nobody_to_send_to' };
  if (how !== 'fetched' && toAddress === '') return { code: 'nowhere_to_send_to' };
  if (how !== 'carrier' || carrierRuleId === null) return null;
  const where = { id: carrierRuleId };
  const terms = await tx.carrierRule.findUnique({ where, select: { id: true } });
  return terms ? null : { code: 'no_such_terms' };
}

/** Terms and name of a carrier belong to what a carrier takes. */
function whereToRow(whereTo: WhereTo) {
  const { how, toName, toAddress, toPhone, insuredCents, insuredBy, note } = whereTo;
  const isCarried = how === 'carrier';
  return {
    ...{ how, toName, toAddress, toPhone, insuredCents, insuredBy, note },
    carrier: isCarried ? whereTo.carrier : '',
    carrierRuleId: isCarried ? whereTo.carrierRuleId : null,
  };
}

/**
 * Changes how and where to a shipment goes, before it leaves.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, no such shipment, it
 *   has left, and what a place to send to refuses
 */
export async function changeShipment(
  doer: Doer,
  input: ChangeShipmentInput,
): Promise<SendingAnswer<Started>> {
  const { shipmentId } = input;
  return carryOut<Started>(doer, { name: 'changeShipment', input }, async (tx) => {
    const found = await findOpen(tx, doer, shipmentId);
    if (!found.ok) return found;
    const fault = await whereToFault(tx, input);
    if (fault) return refuse(fault);
    const { shipment } = found.value;
    const where = { id: shipmentId };
    await tx.shipment.update({ where, data: whereToRow(input), select: { id: true } });
    const facts = { how: input.how, wasHow: shipment.how };
    await tell(tx, doer, { shipment, did: 'changed where a shipment goes', facts });
    return ok({ shipmentId, number: shipment.number });
  });
}
