import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { BeginCountInput, BookCountInput, LeaveCountInput } from '../input/counts';
import { hashDifferences, readDifferences, type DifferenceSeen } from '../reads/moves/differences';
import { decideBooking, type CountMovement, type DifferenceWhy } from '../rules/moves/count';
import type { CountRefusal } from '../rules/moves/count-refusals';
import { bringIntoStock } from '../writes';

/** A count of a whole gallery books thousands of differences. */
const bookingLimits = { timeoutMs: 60_000 };

/**
 * Begins a count of a place: all that stands there, or a part.
 *
 * @returns the count's number; refuses, in this order: not allowed, a key used for something else, a
 *   place nobody knows, a closed one, one that is being counted already
 */
export async function beginCount(
  doer: Doer,
  input: BeginCountInput,
): Promise<Result<{ number: number }, CountRefusal>> {
  return countCommand<{ number: number }>(doer, { name: 'beginCount', input }, async (tx) => {
    const { placeId, how } = input;
    const place = await tx.place.findUnique({
      where: { id: placeId },
      select: { name: true, closedAt: true },
    });
    if (!place) return refuse({ code: 'unknown_place' });
    if (place.closedAt) return refuse({ code: 'place_closed', place: place.name });
    const open = await tx.stockCount.findFirst({
      where: { placeId, bookedAt: null, leftAt: null },
      select: { number: true },
    });
    if (open) return refuse({ code: 'count_is_open', place: place.name, number: open.number });
    const partOnly = how === 'part';
    const { id, number } = await tx.stockCount.create({
      data: { placeId, partOnly, startedById: doer.actor.id, startedAt: doer.at },
      select: { id: true, number: true },
    });
    const facts = { number, place: place.name, partOnly };
    await auditCount(tx, doer, { did: 'began a count', id, facts });
    return ok({ number });
  });
}

/**
 * Books a count whole: what the books say becomes what was counted, one movement for each
 * difference, or one for each number of an edition.
 *
 * What the books say is read in the same transaction, so that a sale in the meantime is seen.
 *
 * @returns how many differences were booked; refuses, in this order: not allowed, a key used for
 *   something else, a count nobody knows, one that is over, nothing counted, differences other than
 *   those shown, and what {@link decideBooking} refuses
 */
export async function bookCount(
  doer: Doer,
  input: BookCountInput,
): Promise<Result<{ differences: number }, CountRefusal>> {
  const work = async (tx: Tx): Promise<Result<{ differences: number }, CountRefusal>> => {
    const open = await findOpenCount(tx, input.countId);
    if (!open.ok) return open;
    const count = open.value;
    const lines = await tx.stockCountLine.count({ where: { countId: count.id } });
    if (lines === 0) return refuse({ code: 'nothing_counted' });
    const differences = await readDifferences(tx, count);
    if (hashDifferences(differences) !== input.shownSha256) {
      return refuse({ code: 'differences_changed' });
    }
    const decided = decideBooking(differences, whysOf(differences, input));
    if (!decided.ok) return decided;
    await putRight(tx, doer, count, decided.value);
    await keepLines(tx, count.id, { differences, movements: decided.value });
    await tx.stockCount.update({
      where: { id: count.id },
      data: { bookedAt: doer.at, bookedById: doer.actor.id },
      select: { id: true },
    });
    const facts = { number: count.number, differences: differences.length };
    await auditCount(tx, doer, { did: 'booked a count', id: count.id, facts });
    return ok({ differences: differences.length });
  };
  return countCommand(doer, { name: 'bookCount', input, limits: bookingLimits }, work);
}

/**
 * Leaves a count: nothing of it is booked.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a count nobody knows,
 *   one that is over
 */
export async function leaveCount(
  doer: Doer,
  input: LeaveCountInput,
): Promise<Result<{ number: number }, CountRefusal>> {
  return countCommand<{ number: number }>(doer, { name: 'leaveCount', input }, async (tx) => {
    const open = await findOpenCount(tx, input.countId);
    if (!open.ok) return open;
    const { id, number } = open.value;
    await tx.stockCount.update({ where: { id }, data: { leftAt: doer.at }, select: { id: true } });
    await auditCount(tx, doer, { did: 'left a count', id, facts: { number } });
    return ok({ number });
  });
}

/** Runs a command of a count once; for this area's own writes. */
export function countCommand<Answer extends Record<string, string | number>>(
  doer: Doer,
  command: { name: string; input: { requestKey: string }; limits?: { timeoutMs: number } },
  work: (tx: Tx) => Promise<Result<Answer, CountRefusal>>,
): Promise<Result<Answer, CountRefusal>> {
  const allowed = allow(doer.actor, 'stock.move');
  if (!allowed.ok) return Promise.resolve(allowed);
  const { name, limits } = command;
  const { requestKey: key, ...input } = command.input;
  return onceOnly({ key, name, staffId: doer.actor.id, input, at: doer.at }, work, limits);
}

/** A count that is neither booked nor left; for this area's own writes. */
export async function findOpenCount(
  tx: Tx,
  id: string,
): Promise<
  Result<
    { id: string; number: number; placeId: string; partOnly: boolean; startedAt: Date },
    CountRefusal
  >
> {
  const count = await tx.stockCount.findUnique({
    where: { id },
    select: {
      ...{ id: true, number: true, placeId: true, partOnly: true },
      ...{ startedAt: true, bookedAt: true, leftAt: true },
    },
  });
  if (!count) return refuse({ code: 'unknown_count' });
  const { bookedAt, leftAt, ...open } = count;
  if (bookedAt) return refuse({ code: 'count_is_over', how: 'booked' });
  return leftAt ? refuse({ code: 'count_is_over', how: 'left' }) : ok(open);
}

function whysOf(
  differences: readonly DifferenceSeen[],
  { whys, whyForAll }: Pick<BookCountInput, 'whys' | 'whyForAll'>,
): Map<string, DifferenceWhy> {
  const said = differences.flatMap(({ skuId }): [string, DifferenceWhy][] => {
    const why = whys[skuId] ?? (whyForAll === '' ? undefined : whyForAll);
    return why === undefined ? [] : [[skuId, why]];
  });
  return new Map(said);
}

async function putRight(
  tx: Tx,
  doer: Doer,
  count: { id: string; number: number; placeId: string },
  movements: readonly CountMovement[],
): Promise<void> {
  const { id: countId, placeId } = count;
  const arrivals = movements.map(({ why, ...moved }) => ({
    ...{ ...moved, placeId, countId },
    note: why === 'found' ? 'found in a count' : '',
  }));
  await bringIntoStock(tx, doer, arrivals);
}

/** What was counted, what the books said, and why they differed, stays with the count. */
async function keepLines(
  tx: Tx,
  countId: string,
  booked: { differences: readonly DifferenceSeen[]; movements: readonly CountMovement[] },
): Promise<void> {
  const whyOf = new Map(booked.movements.map((each) => [each.skuId, each.why]));
  await tx.$executeRaw`
    UPDATE "StockCountLine" SET expected = counted WHERE "countId" = ${countId}::uuid`;
  const rows = booked.differences.map(({ skuId, counted, expected }) => ({
    ...{ skuId, counted, expected, why: whyOf.get(skuId) ?? '' },
  }));
  await tx.$executeRaw`
    INSERT INTO "StockCountLine" ("countId", "skuId", counted, expected, why)
    SELECT ${countId}::uuid, booked.* FROM json_to_recordset(${JSON.stringify(rows)}::json)
      AS booked ("skuId" uuid, counted int, expected int, why text)
    ON CONFLICT ("countId", "skuId") DO UPDATE
      SET expected = EXCLUDED.expected, why = EXCLUDED.why`;
}

async function auditCount(
  tx: Tx,
  doer: Doer,
  told: { did: string; id: string; facts: Record<string, string | number | boolean> },
): Promise<void> {
  const { did, id, facts } = told;
  await recordAudit(tx, doer, { did, subject: 'StockCount', subjectId: id, facts });
}
