import 'server-only';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { TaxPlaceInput, TaxStateInput, TreatmentInput } from '../input';
import { listTreatments } from '../reads';
import type { TaxRefusal } from '../rules/refusals';
import { decideTreatment, type DatedTreatment } from '../rules/treatment-days';

/**
 * Adds a place with rates of its own, or gives one another name; joins the caller's transaction.
 * A place never moves to another state, as what was sold there stays where it was; one that was kept
 * without a state may be given its own.
 *
 * A first place in another state says by its day whether the gallery collects tax in that state.
 *
 * @returns the place's id; refuses, in this order: a place that is not there, a name that is taken
 */
export async function putTaxPlace(
  tx: Tx,
  place: Omit<TaxPlaceInput, 'requestKey'>,
): Promise<Result<string, TaxRefusal>> {
  const { placeId, name, registeredFrom } = place;
  const known = placeId === null ? null : await findPlace(tx, placeId);
  if (placeId !== null && !known) return refuse({ code: 'place_unknown' });
  const namesake = await tx.taxPlace.findFirst({
    where: { name: { equals: name, mode: 'insensitive' }, NOT: { id: placeId ?? newId() } },
    select: { name: true },
  });
  if (namesake) return refuse({ code: 'place_is_there', name: namesake.name });
  const state = await spellingOf(tx, place.state);
  if (known) {
    const data = known.state === '' ? { name, state } : { name };
    await tx.taxPlace.update({ where: { id: known.id }, data, select: { id: true } });
    return ok(known.id);
  }
  const id = newId();
  await tx.taxPlace.create({ data: { id, name, state }, select: { id: true } });
  await beginState(tx, state, registeredFrom);
  return ok(id);
}

async function findPlace(tx: Tx, id: string): Promise<{ id: string; state: string } | null> {
  return tx.taxPlace.findUnique({ where: { id }, select: { id: true, state: true } });
}

/** A state keeps the spelling that it was first written with. */
async function spellingOf(tx: Tx, state: string): Promise<string> {
  const known = await tx.taxPlace.findFirst({
    where: { state: { equals: state, mode: 'insensitive' } },
    select: { state: true },
    orderBy: { id: 'asc' },
  });
  return known?.state ?? state;
}

async function beginState(tx: Tx, state: string, from: Day | null): Promise<void> {
  if (state === (await homeState(tx))) return;
  const registeredFrom = from && dateFromDay(from);
  const kept = await tx.taxState.findUnique({ where: { state }, select: { state: true } });
  if (!kept) await tx.taxState.create({ data: { state, registeredFrom } });
  else if (registeredFrom) await tx.taxState.update({ where: { state }, data: { registeredFrom } });
}

async function homeState(tx: Tx): Promise<string> {
  const gallery = await tx.gallery.findUnique({
    where: { id: 1 },
    select: { taxPlace: { select: { state: true } } },
  });
  invariant(gallery, 'The gallery is set up before its taxes are kept.');
  return gallery.taxPlace.state;
}

/**
 * Keeps what a state says about one kind of line from a day on, and closes what it said before;
 * joins the caller's transaction. Sales made before keep the tax they were made with.
 *
 * @returns what was closed, null for the first; refuses `state_unknown` when no place is kept there,
 *   then what {@link decideTreatment} refuses
 */
export async function addTreatment(
  tx: Tx,
  asked: Omit<TreatmentInput, 'requestKey'>,
): Promise<Result<DatedTreatment | null, TaxRefusal>> {
  const { state, kind, treatment, shareBy, fromOn } = asked;
  const place = await tx.taxPlace.findFirst({ where: { state }, select: { id: true } });
  if (!place) return refuse({ code: 'state_unknown', state });
  const decided = decideTreatment(await listTreatments(state, tx), asked);
  if (!decided.ok) return decided;
  const closes = decided.value;
  if (closes) {
    await tx.taxTreatment.update({
      where: { id: closes.id },
      data: { untilOn: dateFromDay(fromOn) },
      select: { id: true },
    });
  }
  await tx.taxTreatment.create({
    data: { state, kind, treatment, shareBy, fromOn: dateFromDay(fromOn) },
    select: { id: true },
  });
  return ok(closes);
}

/**
 * Keeps since when we collect in a state and from how much we must; joins the caller's transaction.
 *
 * @returns the state as it is spelt here; refuses `state_is_home` for the gallery's own
 */
export async function putState(
  tx: Tx,
  asked: Omit<TaxStateInput, 'requestKey'>,
): Promise<Result<string, TaxRefusal>> {
  const { registeredFrom, lookedUpOn, needs, thresholdCents, thresholdSales, window, note } = asked;
  const state = await spellingOf(tx, asked.state);
  if (state === (await homeState(tx))) return refuse({ code: 'state_is_home', state });
  const data = {
    ...{ thresholdCents, thresholdSales, window, note, needsBoth: needs === 'both' },
    registeredFrom: registeredFrom && dateFromDay(registeredFrom),
    lookedUpOn: lookedUpOn && dateFromDay(lookedUpOn),
  };
  await tx.taxState.upsert({ where: { state }, create: { state, ...data }, update: data });
  return ok(state);
}
