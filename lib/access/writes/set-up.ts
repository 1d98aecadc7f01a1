import 'server-only';
import { recordAudit } from '@/lib/audit/writes';
import { dayOf } from '@/lib/dates/rules';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { addRate } from '@/lib/tax/writes';
import type { FirstRunInput, GalleryInput } from '../input/set-up';
import { hashPassword } from '../password-hash';
import type { Actor, Doer } from '../rules';
import { readPassword } from '../rules/password';
import type { FirstRunRefusal } from '../rules/set-up';
import type { SessionToken } from '../session';
import { keepSetting, type SettingKept } from './keep-setting';
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

/** Keeps how the gallery works. @returns refuses `not_allowed` */
export async function keepGallery(doer: Doer, input: GalleryInput): SettingKept {
  const { requestKey, ...settings } = input;
  return keepSetting(doer, { name: 'keepGallery', requestKey, asked: settings }, async (tx) => {
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
