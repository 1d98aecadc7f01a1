import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import { endHold, holdPieces } from '@/lib/holds/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { giveBackPayments } from '@/lib/returns/writes/give-back-payments';
import { bringIntoStock, decideArrivals } from '@/lib/stock/writes';
import type { BringInMadeInput, CallOffOrderInput, MoveOrderDayInput, OfOrderInput } from './input';
import { orderColumns, orderOf, type OrderShown } from './reads/order';
import type { OrderRefusal } from './rules/refusals';

/** Which order was changed. */
export type OrderAnswer = { number: number };

type Setting = { order: OrderShown; gallery: Gallery; todayOn: Day };

/**
 * Brings the good pieces of an order in from the studio, and keeps back what it wants of them; the
 * spare ones come into stock for anybody.
 *
 * @returns refuses, in this order: not allowed, unknown, called off, handed over, all here already,
 *   what an edition or a hold refuses
 */
export async function bringInMade(
  doer: Doer,
  input: BringInMadeInput,
): Promise<Result<OrderAnswer, OrderRefusal>> {
  return withRunning(doer, 'bringInMade', input, (tx, { order, gallery }) =>
    bringInMadeStep(tx, doer, { order, placeId: gallery.counterId, pieces: input.pieces }),
  );
}

async function bringInMadeStep(
  tx: Tx,
  doer: Doer,
  { order, placeId, pieces }: { order: OrderShown; placeId: string; pieces: number },
): Promise<Result<true, OrderRefusal>> {
  const missing = order.quantity - order.waitingHere - order.handedOver;
  if (missing <= 0) return refuse({ code: 'all_here' });
  const { id: skuId } = order.sku;
  const cost = await tx.sku.findUniqueOrThrow({
    where: { id: skuId },
    select: { costCents: true },
  });
  const note = `special order ${order.number}`;
  const made = { skuId, placeId, quantity: pieces, reason: 'made', note } as const;
  const arrivals = await decideArrivals(tx, [{ ...made, unitCostCents: cost.costCents }]);
  if (!arrivals.ok) return refuse({ code: 'edition', why: arrivals.refusal });
  await bringIntoStock(tx, doer, arrivals.value);
  const held = await holdPieces(tx, doer, {
    ...{ skuId, placeId, quantity: Math.min(pieces, missing), editionNumber: null },
    ...{ forWhom: order.collector.name, phone: order.collector.phone ?? '' },
    ...{ collectorId: order.collector.id, untilAt: null, note, orderId: order.id },
  });
  if (!held.ok) return refuse({ code: 'hold', why: held.refusal });
  await tell(tx, doer, { order, did: 'brought in what was made to order', more: { pieces } });
  return ok(true);
}

/**
 * Notes that the collector was told that it is here.
 *
 * @returns refuses, in this order: not allowed, unknown, called off, handed over, not here yet,
 *   told already
 */
export async function tellReady(
  doer: Doer,
  input: OfOrderInput,
): Promise<Result<OrderAnswer, OrderRefusal>> {
  return withRunning(doer, 'tellReady', input, async (tx, { order }) => {
    if (order.waitingHere === 0) return refuse({ code: 'not_here_yet' });
    if (order.toldReadyOn !== null) return refuse({ code: 'told_already' });
    await tx.specialOrder.update({
      where: { id: order.id },
      data: { toldReadyAt: doer.at },
      select: { id: true },
    });
    await tell(tx, doer, { order, did: 'told a collector that an order is here', more: {} });
    return ok(true);
  });
}

/**
 * Names another day on which it is about ready, after the collector was told.
 *
 * @returns refuses, in this order: not allowed, unknown, called off, handed over, a day that is over
 */
export async function moveOrderDay(
  doer: Doer,
  input: MoveOrderDayInput,
): Promise<Result<OrderAnswer, OrderRefusal>> {
  return withRunning(doer, 'moveOrderDay', input, async (tx, { order, todayOn }) => {
    const { readyAboutOn, why } = input;
    if (readyAboutOn < todayOn) return refuse({ code: 'day_is_over', todayOn });
    const day = dateFromDay(readyAboutOn);
    await tx.specialOrder.update({
      where: { id: order.id },
      data: { readyAboutOn: day, job: { update: { neededOn: day } } },
      select: { id: true },
    });
    const facts = { from: order.readyAboutOn, to: readyAboutOn, why };
    await tell(tx, doer, { order, did: 'named another day for an order', more: facts });
    return ok(true);
  });
}

/**
 * Calls an order off: what was paid down goes back, less what is kept, and its pieces are free.
 *
 * @returns refuses, in this order: not allowed, unknown, called off, handed over, and what giving
 *   the money back refuses
 */
export async function callOffOrder(
  doer: Doer,
  input: CallOffOrderInput,
): Promise<Result<OrderAnswer, OrderRefusal>> {
  const back = allow(doer.actor, 'counter.give_back');
  if (!back.ok) return back;
  return withRunning(doer, 'callOffOrder', input, async (tx, { order }) => {
    const { why, keepCents, how } = input;
    if (order.paidCents > 0n || keepCents > 0n) {
      const asked = { orderId: order.id, keepCents, reason: why, how };
      const given = await giveBackPayments(tx, doer, asked);
      if (!given.ok) return refuse({ code: 'money', why: given.refusal });
    }
    for (const hold of order.holds) {
      const ended = await endHold(tx, doer, { holdId: hold.id, how: 'released' });
      if (!ended.ok) return refuse({ code: 'hold', why: ended.refusal });
    }
    await tx.specialOrder.update({
      where: { id: order.id },
      data: { endedAt: doer.at, endedWhy: why },
      select: { id: true },
    });
    await tell(tx, doer, { order, did: 'called an order off', more: { why, keepCents } });
    return ok(true);
  });
}

/** Runs a command on an order that is neither called off nor handed over, once. */
async function withRunning(
  doer: Doer,
  name: string,
  { requestKey: key, ...input }: { requestKey: string; orderId: string },
  work: (tx: Tx, setting: Setting) => Promise<Result<true, OrderRefusal>>,
): Promise<Result<OrderAnswer, OrderRefusal>> {
  const allowed = allow(doer.actor, 'orders.take');
  if (!allowed.ok) return allowed;
  const command = { key, name, staffId: doer.actor.id, input, at: doer.at };
  return onceOnly<OrderAnswer, OrderRefusal>(command, async (tx) => {
    const gallery = await getGallery(tx);
    const todayOn = dayOf(doer.at, gallery.timeZone);
    const where = { id: input.orderId };
    const row = await tx.specialOrder.findUnique({ where, select: orderColumns });
    if (!row) return refuse({ code: 'unknown_order' });
    const order = orderOf(row, todayOn, gallery.timeZone);
    if (order.hasEnded) return refuse({ code: 'order_has_ended' });
    if (order.standing.where === 'handed_over') return refuse({ code: 'handed_over_already' });
    const done = await work(tx, { order, gallery, todayOn });
    return done.ok ? ok({ number: order.number }) : done;
  });
}

type Facts = Parameters<typeof recordAudit>[2]['facts'];

type Told = { order: OrderShown; did: string; more: Facts };

async function tell(tx: Tx, doer: Doer, { order, did, more }: Told): Promise<void> {
  const facts = { number: order.number, ...more };
  await recordAudit(tx, doer, { did, subject: 'SpecialOrder', subjectId: order.id, facts });
}
