import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { FairPriceInput, KeepFairInput } from './input';
import { fairPlaceName, type FairRefusal } from './rules';

/** Everything that keeps a fair's command from being done. */
export type FairAnswer<Value> = Result<Value, FairRefusal | NotAllowed | KeyRefusal>;

/**
 * Writes a fair down with a place of its own, or changes what is known of it. What it cost and the
 * hours may be written down after it is closed; its name, days and tax place may not.
 *
 * @returns the fair's number; refuses, in this order: not allowed, a key used for something else,
 *   a tax place nobody keeps, a fair nobody knows, the same name and first day twice
 */
export async function keepFair(doer: Doer, input: KeepFairInput): Promise<FairAnswer<KeptFair>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, feeCents, travelCents, otherCents, ...said } = input;
  const plain = { fee: feeCents.toString(), travel: travelCents.toString() };
  const kept = { ...said, ...plain, other: otherCents.toString() };
  const command = { key, name: 'keepFair', staffId: doer.actor.id, input: kept, at: doer.at };
  return onceOnly<KeptFair, FairRefusal>(command, async (tx) => {
    const taxPlace = await tx.taxPlace.findUnique({
      where: { id: input.taxPlaceId },
      select: { id: true },
    });
    if (!taxPlace) return refuse({ code: 'unknown_tax_place' });
    const { fairId } = input;
    return fairId === null ? openFair(tx, doer, input) : changeFair(tx, doer, { ...input, fairId });
  });
}

type KeptFair = { fairId: string; number: number };

async function openFair(
  tx: Tx,
  doer: Doer,
  input: KeepFairInput,
): Promise<Result<KeptFair, FairRefusal>> {
  const placeName = fairPlaceName(input.name, input.town, input.fromOn);
  const taken = await tx.place.findUnique({ where: { name: placeName }, select: { id: true } });
  if (taken) return refuse({ code: 'fair_is_known', name: input.name, on: input.fromOn });
  const [fairId, placeId] = [newId(), newId()];
  await tx.place.create({ data: { id: placeId, name: placeName, kind: 'fair' } });
  const { number } = await tx.fair.create({
    data: { id: fairId, placeId, ...fieldsOf(input), ...costsOf(input) },
    select: { number: true },
  });
  const facts = { number, name: input.name, fromOn: input.fromOn };
  const did = 'wrote a fair down';
  await recordAudit(tx, doer, { did, subject: 'Fair', subjectId: fairId, facts });
  return ok({ fairId, number });
}

async function changeFair(
  tx: Tx,
  doer: Doer,
  input: KeepFairInput & { fairId: string },
): Promise<Result<KeptFair, FairRefusal>> {
  const { fairId } = input;
  const before = await tx.fair.findUnique({
    where: { id: fairId },
    select: { number: true, placeId: true, closedAt: true },
  });
  if (!before) return refuse({ code: 'unknown_fair' });
  const { number, placeId } = before;
  const isOpen = before.closedAt === null;
  if (isOpen) {
    const name = fairPlaceName(input.name, input.town, input.fromOn);
    const taken = await tx.place.findUnique({ where: { name }, select: { id: true } });
    if (taken && taken.id !== placeId) {
      return refuse({ code: 'fair_is_known', name: input.name, on: input.fromOn });
    }
    await tx.place.update({ where: { id: placeId }, data: { name }, select: { id: true } });
  }
  await tx.fair.update({
    where: { id: fairId },
    data: { ...(isOpen ? fieldsOf(input) : {}), ...costsOf(input) },
    select: { id: true },
  });
  const { feeCents, travelCents, otherCents, minutes } = input;
  const facts = { number, feeCents, travelCents, otherCents, minutes };
  const did = 'changed what is known of a fair';
  await recordAudit(tx, doer, { did, subject: 'Fair', subjectId: fairId, facts });
  return ok({ fairId, number });
}

function fieldsOf({ name, town, taxPlaceId, fromOn, untilOn }: KeepFairInput) {
  const days = { fromOn: dateFromDay(fromOn), untilOn: dateFromDay(untilOn) };
  return { name, town, taxPlaceId, ...days };
}

function costsOf({ feeCents, travelCents, otherCents, minutes, note }: KeepFairInput) {
  return { feeCents, travelCents, otherCents, minutes, note };
}

/**
 * Sets what a piece costs at a fair, or lets it cost there what it costs at home.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a fair nobody knows
 *   or one that is closed, a piece that never went there
 */
export async function setFairPrice(
  doer: Doer,
  input: FairPriceInput,
): Promise<FairAnswer<{ number: number }>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, price, ...said } = input;
  const kept = { ...said, price: price?.toString() ?? null };
  const command = { key, name: 'setFairPrice', staffId: doer.actor.id, input: kept, at: doer.at };
  return onceOnly<{ number: number }, FairRefusal>(command, async (tx) => {
    const fair = await openFairById(tx, input.fairId);
    if (!fair.ok) return fair;
    const { fairId, skuId } = input;
    const { placeId, number } = fair.value;
    const went = await tx.stockLevel.findUnique({
      where: { skuId_placeId: { skuId, placeId } },
      select: { sku: { select: { code: true } } },
    });
    if (!went) return refuse({ code: 'unknown_piece' });
    await tx.fairPrice.deleteMany({ where: { fairId, skuId } });
    if (price !== null) await tx.fairPrice.create({ data: { fairId, skuId, priceCents: price } });
    const facts = { number, sku: went.sku.code, priceCents: price };
    const did = 'set a price for a fair';
    await recordAudit(tx, doer, { did, subject: 'Fair', subjectId: fairId, facts });
    return ok({ number });
  });
}

/** A fair that pieces still go to and come from. */
export type OpenFair = { number: number; name: string; placeId: string };

/** Looks a fair up that is not closed; refuses one that nobody knows, then one that is closed. */
export async function openFairById(tx: Tx, fairId: string): Promise<Result<OpenFair, FairRefusal>> {
  const fair = await tx.fair.findUnique({
    where: { id: fairId },
    select: { number: true, name: true, placeId: true, closedAt: true },
  });
  if (!fair) return refuse({ code: 'unknown_fair' });
  const { closedAt, ...open } = fair;
  return closedAt === null ? ok(open) : refuse({ code: 'fair_is_closed', name: open.name });
}
