import 'server-only';
import { recordAudit } from '@/lib/audit/writes';
import { dayOf } from '@/lib/dates/rules';
import { inTransaction, onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { addRate, endRate } from '@/lib/tax/writes';
import type { EndRateInput, FirstRunInput, GalleryInput, NewRateInput } from '../input/set-up';
import { hashPassword } from '../password-hash';
import { allow, type Actor, type Doer } from '../rules';
import { readPassword } from '../rules/password';
import type { FirstRunRefusal, SettingsRefusal } from '../rules/set-up';
import type { SessionToken } from '../session';
import { openSessionFor } from './sign-in';

const counterName = 'Gallery floor';

/**
 * Makes the gallery, its tax place and rates, the counter's place and the owner, and lets the
 * owner in: all of it or nothing. Of two at the same moment one wins.
 *
 * @returns refuses, in this order: the password's refusals, `already_set_up` as soon as anybody
 *   works here, and the rates' refusals
 */
export async function finishFirstRun(
  input: FirstRunInput,
  from: { at: Date; device: string },
): Promise<Result<SessionToken, FirstRunRefusal>> {
  const { ownerName, signInName } = input;
  const password = readPassword(input.password, [ownerName, signInName]);
  if (!password.ok) return password;
  const passwordHash = await hashPassword(password.value);
  return inTransaction<SessionToken, FirstRunRefusal>(async (tx) => {
    const gallery = await tx.gallery.findUnique({ where: { id: 1 }, select: { id: true } });
    const somebody = await tx.staff.findFirst({ select: { id: true } });
    if (gallery ?? somebody) return refuse({ code: 'already_set_up' });
    const made = await makeGallery(tx, input, from.at);
    if (!made.ok) return made;
    const owner: Actor = { id: newId(), name: ownerName, roles: ['owner'] };
    await tx.staff.create({
      data: { ...owner, roles: ['owner'], signInName, passwordHash, createdAt: from.at },
    });
    const facts = { name: input.name, timeZone: input.timeZone };
    const entry = { did: 'set up the gallery', subject: 'Gallery', subjectId: '1', facts };
    await recordAudit(tx, { actor: owner, at: from.at }, entry);
    return ok(await openSessionFor(tx, owner, from));
  });
}

async function makeGallery(
  tx: Tx,
  { name, state, timeZone, rates }: FirstRunInput,
  at: Date,
): Promise<Result<true, FirstRunRefusal>> {
  const taxPlaceId = newId();
  const counterId = newId();
  const placeName = state === '' ? 'At the gallery' : `At the gallery, ${state}`;
  await tx.taxPlace.create({ data: { id: taxPlaceId, name: placeName, state } });
  await tx.place.create({ data: { id: counterId, name: counterName } });
  await tx.gallery.create({ data: { id: 1, name, state, timeZone, taxPlaceId, counterId } });
  const fromOn = dayOf(at, timeZone);
  for (const rate of rates) {
    const added = await addRate(tx, taxPlaceId, { ...rate, fromOn });
    if (!added.ok) return added;
  }
  return ok(true);
}

type Done = Promise<Result<string, SettingsRefusal>>;

/** Keeps how the gallery works. @returns refuses `not_allowed` */
export async function keepGallery(doer: Doer, input: GalleryInput): Done {
  const { requestKey, ...settings } = input;
  return keep(doer, { name: 'keepGallery', requestKey, asked: settings }, async (tx) => {
    await tx.gallery.update({ where: { id: 1 }, data: settings });
    const facts = settings;
    const entry = {
      did: 'changed how the gallery works',
      subject: 'Gallery',
      subjectId: '1',
      facts,
    };
    await recordAudit(tx, doer, entry);
    return ok(settings.name);
  });
}

/** Lets a tax rate hold at the gallery from a day on. @returns refuses `not_allowed`, see addRate */
export async function keepRate(doer: Doer, input: NewRateInput): Done {
  const { requestKey, ...rate } = input;
  return keep(doer, { name: 'keepRate', requestKey, asked: rate }, async (tx) => {
    const { taxPlaceId } = await getGallery(tx);
    const added = await addRate(tx, taxPlaceId, rate);
    if (!added.ok) return added;
    const facts = { ...rate, before: added.value?.ratePercent ?? null };
    const entry = { did: 'set a tax rate', subject: 'TaxPlace', subjectId: taxPlaceId, facts };
    await recordAudit(tx, doer, entry);
    return ok(rate.authority);
  });
}

/** Ends a tax rate of the gallery on a day. @returns refuses `not_allowed`, see endRate */
export async function stopRate(doer: Doer, input: EndRateInput): Done {
  const { requestKey, rateId, untilOn } = input;
  return keep(doer, { name: 'stopRate', requestKey, asked: { rateId, untilOn } }, async (tx) => {
    const { taxPlaceId } = await getGallery(tx);
    const ended = await endRate(tx, rateId, untilOn);
    if (!ended.ok) return ended;
    const { authority, ratePercent } = ended.value;
    const facts = { authority, ratePercent, untilOn };
    const entry = { did: 'ended a tax rate', subject: 'TaxPlace', subjectId: taxPlaceId, facts };
    await recordAudit(tx, doer, entry);
    return ok(authority);
  });
}

type Kept = { name: string; requestKey: string; asked: Record<string, unknown> };

async function keep(
  doer: Doer,
  { name, requestKey: key, asked }: Kept,
  work: (tx: Tx) => Promise<Result<string, SettingsRefusal>>,
): Done {
  const may = allow(doer.actor, 'settings.keep');
  if (!may.ok) return may;
  const command = { key, name, staffId: doer.actor.id, input: asked, at: doer.at };
  return onceOnly<string, SettingsRefusal>(command, work);
}
