import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { AddPlaceInput, ClosePlaceInput, RenamePlaceInput } from '../input/places';
import {
  decideClosing,
  type PlaceKind,
  type PlaceKnown,
  type PlaceRefusal,
} from '../rules/moves/place';

type PlaceAnswer = { placeId: string };

/**
 * Adds a place of our own: a room, a store, a corner of the studio.
 *
 * @returns its id; refuses, in this order: not allowed, a key used for something else, a name that
 *   another place has
 */
export async function addPlace(
  doer: Doer,
  input: AddPlaceInput,
): Promise<Result<PlaceAnswer, PlaceRefusal>> {
  return command(doer, 'addPlace', input, async (tx) => {
    const { name, kind } = input;
    if (await isTaken(tx, name, null)) return refuse({ code: 'name_taken', name });
    return ok({ placeId: await openPlace(tx, doer, { name, kind }) });
  });
}

/**
 * Opens a place of any kind; joins the caller's transaction, for another gallery that has one of
 * its own. The caller has asked whether its name is free.
 *
 * @returns its id
 */
export async function openPlace(
  tx: Tx,
  doer: Doer,
  place: { name: string; kind: PlaceKind },
): Promise<string> {
  const id = newId();
  await tx.place.create({ data: { id, ...place }, select: { id: true } });
  const facts = { name: place.name, kind: place.kind };
  await recordAudit(tx, doer, { did: 'added a place', subject: 'Place', subjectId: id, facts });
  return id;
}

/**
 * Gives a place another name, and one of our own another kind.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a place nobody knows,
 *   a closed one, a name that another place has
 */
export async function renamePlace(
  doer: Doer,
  input: RenamePlaceInput,
): Promise<Result<PlaceAnswer, PlaceRefusal>> {
  return command(doer, 'renamePlace', input, async (tx) => {
    const { placeId, name } = input;
    const place = await readPlaceKnown(tx, placeId);
    if (!place) return refuse({ code: 'unknown_place' });
    if (place.isClosed) return refuse({ code: 'place_closed', place: place.name });
    if (await isTaken(tx, name, placeId)) return refuse({ code: 'name_taken', name });
    const isOurs = ['gallery', 'storeroom', 'studio'].includes(place.kind);
    const kind = isOurs ? (input.kind ?? place.kind) : place.kind;
    await tx.place.update({ where: { id: placeId }, data: { name, kind }, select: { id: true } });
    const facts = { was: place.name, name, kind };
    await recordAudit(tx, doer, { did: 'renamed a place', ...subjectOf(placeId), facts });
    return ok({ placeId });
  });
}

/**
 * Closes a place where nothing stands any more.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a place nobody knows,
 *   and what {@link decideClosing} refuses
 */
export async function closePlace(
  doer: Doer,
  input: ClosePlaceInput,
): Promise<Result<PlaceAnswer, PlaceRefusal>> {
  return command(doer, 'closePlace', input, async (tx) => {
    const { placeId } = input;
    const place = await readPlaceKnown(tx, placeId);
    if (!place) return refuse({ code: 'unknown_place' });
    const decided = decideClosing(place);
    if (!decided.ok) return decided;
    await shutPlace(tx, doer, { id: placeId, name: place.name });
    return ok({ placeId });
  });
}

/**
 * Closes a place whatever its kind; joins the caller's transaction, for another gallery with which
 * it is ended. The caller has asked whether anything stands there; the database asks again.
 */
export async function shutPlace(
  tx: Tx,
  doer: Doer,
  place: { id: string; name: string },
): Promise<void> {
  const data = { closedAt: doer.at };
  await tx.place.update({ where: { id: place.id }, data, select: { id: true } });
  const facts = { name: place.name };
  await recordAudit(tx, doer, { did: 'closed a place', ...subjectOf(place.id), facts });
}

function command(
  doer: Doer,
  name: string,
  { requestKey: key, ...input }: { requestKey: string },
  work: (tx: Tx) => Promise<Result<PlaceAnswer, PlaceRefusal>>,
): Promise<Result<PlaceAnswer, PlaceRefusal>> {
  const allowed = allow(doer.actor, 'stock.move');
  if (!allowed.ok) return Promise.resolve(allowed);
  return onceOnly({ key, name, staffId: doer.actor.id, input, at: doer.at }, work);
}

function subjectOf(placeId: string) {
  return { subject: 'Place', subjectId: placeId };
}

/** Two names that differ only in capitals are one name to whoever reads them on a tag. */
async function isTaken(tx: Tx, name: string, exceptId: string | null): Promise<boolean> {
  const other = await tx.place.findFirst({
    where: {
      name: { equals: name, mode: 'insensitive' },
      ...(exceptId === null ? {} : { id: { not: exceptId } }),
    },
    select: { id: true },
  });
  return other !== null;
}

async function readPlaceKnown(tx: Tx, id: string): Promise<PlaceKnown | null> {
  const place = await tx.place.findUnique({
    where: { id },
    select: { name: true, kind: true, closedAt: true },
  });
  if (!place) return null;
  const { counterId } = await getGallery(tx);
  const there = await tx.stockLevel.aggregate({ where: { placeId: id }, _sum: { onHand: true } });
  const count = await tx.stockCount.findFirst({
    where: { placeId: id, bookedAt: null, leftAt: null },
    select: { number: true },
    orderBy: { number: 'asc' },
  });
  const { name, kind, closedAt } = place;
  return {
    ...{ name, kind, isClosed: closedAt !== null, isCounter: id === counterId },
    pieces: there._sum.onHand ?? 0,
    openCount: count?.number ?? null,
  };
}
