import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { WaitingTouchInput, WaitInput } from '../input';
import { untilByDefault } from '../rules';
import type { AnyHoldRefusal, HoldRefusal } from '../rules/refusals';
import { holdPieces, type HoldMade } from '../writes';
import { carryOut, nameWhom } from './carry-out';

/** Somebody who was put down as waiting. */
export type PutDown = { waitingId: string; forWhom: string };

/**
 * Puts somebody down as second in line, or to be told when a piece is back.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, an unknown
 *   collector, an unknown piece
 */
export async function waitForPiece(
  doer: Doer,
  input: WaitInput,
): Promise<Result<PutDown, AnyHoldRefusal>> {
  return carryOut<PutDown, HoldRefusal>(doer, { name: 'waitForPiece', input }, async (tx) => {
    const { skuId, what, note } = input;
    const named = await nameWhom(tx, input);
    if (!named.ok) return named;
    const sku = await tx.sku.findUnique({ where: { id: skuId }, select: { code: true } });
    if (!sku) return refuse({ code: 'unknown_piece' });

    const waitingId = newId();
    const by = { staffId: doer.actor.id, at: doer.at };
    const data = { id: waitingId, skuId, what, note, ...named.value, ...by };
    await tx.waiting.create({ data, select: { id: true } });
    const { forWhom } = named.value;
    const facts = { forWhom, sku: sku.code, what };
    const did = 'put somebody down as waiting';
    await recordAudit(tx, doer, { did, subject: 'Waiting', subjectId: waitingId, facts });
    return ok({ waitingId, forWhom });
  });
}

/**
 * Notes that somebody who waits was told that the piece can be had.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, waits no
 *   longer
 */
export async function noteTold(
  doer: Doer,
  input: WaitingTouchInput,
): Promise<Result<PutDown, AnyHoldRefusal>> {
  return carryOut<PutDown, HoldRefusal>(doer, { name: 'noteTold', input }, async (tx) => {
    const waiting = await findWaiting(tx, input.waitingId);
    if (!waiting.ok) return waiting;
    await change(tx, doer, { waiting: waiting.value, did: 'told', data: { toldAt: doer.at } });
    return ok({ waitingId: input.waitingId, forWhom: waiting.value.forWhom });
  });
}

/**
 * Takes somebody off the list of those who wait.
 *
 * @returns refuses as {@link noteTold} does
 */
export async function waitNoLonger(
  doer: Doer,
  input: WaitingTouchInput,
): Promise<Result<PutDown, AnyHoldRefusal>> {
  return carryOut<PutDown, HoldRefusal>(doer, { name: 'waitNoLonger', input }, async (tx) => {
    const waiting = await findWaiting(tx, input.waitingId);
    if (!waiting.ok) return waiting;
    const data = { endedAt: doer.at };
    await change(tx, doer, { waiting: waiting.value, did: 'took off the waiting list', data });
    return ok({ waitingId: input.waitingId, forWhom: waiting.value.forWhom });
  });
}

/**
 * Makes the hold of somebody who waited: one piece at the counter, for as long as the gallery
 * holds without money. They wait no longer then.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, waits no
 *   longer, and then what {@link holdPieces} refuses
 */
export async function holdForWaiting(
  doer: Doer,
  input: WaitingTouchInput,
): Promise<Result<HoldMade, AnyHoldRefusal>> {
  return carryOut<HoldMade, HoldRefusal>(doer, { name: 'holdForWaiting', input }, async (tx) => {
    const waiting = await findWaiting(tx, input.waitingId);
    if (!waiting.ok) return waiting;
    const { skuId, forWhom, phone, collectorId, note } = waiting.value;
    const { counterId: placeId, holdHours } = await getGallery(tx);
    const held = await holdPieces(tx, doer, {
      ...{ skuId, placeId, forWhom, phone, collectorId, note, quantity: 1 },
      editionNumber: await lowestFree(tx, skuId, placeId),
      untilAt: untilByDefault(doer.at, holdHours),
    });
    if (!held.ok) return held;
    const data = { endedAt: doer.at };
    await change(tx, doer, { waiting: waiting.value, did: 'held for who waited', data });
    return held;
  });
}

/** The lowest number of an edition that is here and not kept back; null for anything else. */
async function lowestFree(tx: Tx, skuId: string, placeId: string): Promise<number | null> {
  const held = await tx.hold.findMany({
    where: { skuId, placeId, endedAt: null, editionNumber: { not: null } },
    select: { editionNumber: true },
  });
  const taken = held.flatMap(({ editionNumber }) =>
    editionNumber === null ? [] : [editionNumber],
  );
  const free = await tx.editionPiece.findFirst({
    where: { skuId, placeId, number: { notIn: taken } },
    orderBy: { number: 'asc' },
    select: { number: true },
  });
  return free?.number ?? null;
}

type FoundWaiting = {
  id: string;
  skuId: string;
  forWhom: string;
  phone: string;
  collectorId: string | null;
  note: string;
};

async function findWaiting(tx: Tx, id: string): Promise<Result<FoundWaiting, HoldRefusal>> {
  const found = await tx.waiting.findUnique({
    where: { id },
    select: {
      ...{ id: true, skuId: true, forWhom: true, phone: true, collectorId: true, note: true },
      endedAt: true,
    },
  });
  if (!found) return refuse({ code: 'unknown_waiting' });
  return found.endedAt === null ? ok(found) : refuse({ code: 'waits_no_longer' });
}

async function change(
  tx: Tx,
  doer: Doer,
  made: { waiting: FoundWaiting; did: string; data: { toldAt: Date } | { endedAt: Date } },
): Promise<void> {
  const { waiting, did, data } = made;
  await tx.waiting.update({ where: { id: waiting.id }, data, select: { id: true } });
  const facts = { forWhom: waiting.forWhom };
  await recordAudit(tx, doer, { did, subject: 'Waiting', subjectId: waiting.id, facts });
}
