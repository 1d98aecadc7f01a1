import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { collectorFields } from '@/lib/collectors/input';
import { livingId } from '@/lib/collectors/reads/group';
import { addCollector } from '@/lib/collectors/writes';
import type { ReferralSaid } from '@/lib/commissions/input/enquiry/referral';
import type {
  AddPicturesInput,
  ChangeRequestInput,
  LogCommissionInput,
  RequestFields,
} from '@/lib/commissions/input/request';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import { keepFile } from '@/lib/files/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { carryOut, findOpen, tellHistory, type AnyRefusal } from './carry-out';
import { settleReferral } from './enquiry/referral';
import { fileToKeep, readyPictures, type ReadyPicture } from '@/lib/files/ready';

/** A commission that was written down: its number is what people say. */
export type LoggedCommission = { commissionId: string; number: number };

/**
 * Logs what a collector asks for, while they stand there; the collector may be new.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, a collector nobody knows, a clay body nobody knows, who brought them (see
 *   {@link settleReferral})
 * @example a request with nothing but a title and a name is one: the rest is "not known yet"
 */
export async function logCommission(
  doer: Doer,
  input: LogCommissionInput,
): Promise<Result<LoggedCommission, AnyRefusal>> {
  const permission = 'commissions.write';
  const allowed = allow(doer.actor, permission);
  if (!allowed.ok) return allowed;
  const { requestKey, pictures, collectorId, newName, newPhone, newEmail, ...asked } = input;
  const ready = await readyPictures(pictures);
  if (!ready.ok) return ready;
  const { fields, referral } = apart(asked);
  const who = collectorId ?? { name: newName ?? '', phone: newPhone, email: newEmail };
  const shas = ready.value.map((picture) => picture.sha256);
  const said = { who, fields, referral, shas };
  const command = { name: 'logCommission', permission, key: requestKey, input: said } as const;
  return carryOut(doer, command, (tx) =>
    addCommission(tx, doer, { who, fields, referral, pictures: ready.value }),
  );
}

/** What a form says of the request, and what of who brought them. */
function apart({
  asksReferral,
  broughtLetters,
  broughtById,
  broughtPercent,
  broughtKnown,
  ...fields
}: RequestFields & ReferralSaid): { fields: RequestFields; referral: ReferralSaid } {
  const referral = { asksReferral, broughtLetters, broughtById, broughtPercent, broughtKnown };
  return { fields, referral };
}

/** A request to write down: for a collector by id, or for someone new. */
export type RequestToAdd = {
  who: string | { name: string; phone: string | null; email: string | null };
  fields: RequestLeast & Partial<RequestFields>;
  referral?: ReferralSaid;
  pictures: readonly ReadyPicture[];
};

type RequestLeast = Pick<RequestFields, 'title' | 'wish'>;

/** The step of {@link logCommission}: joins the caller's transaction, asks nobody for leave. */
export async function addCommission(
  tx: Tx,
  doer: Doer,
  request: RequestToAdd,
): Promise<Result<LoggedCommission, CommissionRefusal>> {
  const collectorId = await collectorOf(tx, doer, request.who);
  if (!collectorId) return refuse({ code: 'unknown_collector' });
  const { wishedOn, bodyId, ...fields } = request.fields;
  if (!(await isBody(tx, bodyId))) return refuse({ code: 'unknown_body' });
  const { timeZone } = await getGallery(tx);
  const { id, number } = await tx.commission.create({
    data: {
      ...fields,
      collectorId,
      bodyId: bodyId ?? null,
      wishedOn: dateOrNull(wishedOn ?? null),
      askedAt: doer.at,
      askedOn: dateFromDay(dayOf(doer.at, timeZone)),
      takenById: doer.actor.id,
    },
    select: { id: true, number: true },
  });
  await keepPictures(tx, doer, { commissionId: id, caption: '', pictures: request.pictures });
  await tellHistory(tx, doer, {
    commissionId: id,
    did: 'wrote down the request',
    facts: { title: fields.title, pictures: request.pictures.length },
  });
  const { referral: said } = request;
  const settle = { commissionId: id, collectorId, isAgreed: false };
  const settled = said ? await settleReferral(tx, doer, { ...settle, said }) : ok(true);
  return settled.ok ? ok({ commissionId: id, number }) : settled;
}

/** Whether a clay body is written down; none is one too. */
async function isBody(tx: Tx, bodyId: string | null | undefined): Promise<boolean> {
  if (bodyId === null || bodyId === undefined) return true;
  return (await tx.clayBody.count({ where: { id: bodyId } })) === 1;
}

async function collectorOf(tx: Tx, doer: Doer, who: RequestToAdd['who']): Promise<string | null> {
  if (typeof who !== 'string') {
    const fields = collectorFields.parse({ name: who.name });
    return addCollector(tx, doer, { ...fields, phone: who.phone, email: who.email });
  }
  return livingId(tx, who);
}

async function keepPictures(
  tx: Tx,
  doer: Doer,
  kept: { commissionId: string; caption: string; pictures: readonly ReadyPicture[] },
): Promise<void> {
  const { commissionId, caption, pictures } = kept;
  const fileIds: string[] = [];
  for (const picture of pictures) {
    fileIds.push((await keepFile(tx, fileToKeep(picture, doer.at))).id);
  }
  await tx.commissionPicture.createMany({
    data: fileIds.map((fileId) => ({ commissionId, fileId, caption, at: doer.at })),
  });
}

/**
 * Changes what is known of a request.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, handed over, a clay body nobody knows, who brought them (see {@link settleReferral})
 */
export async function changeRequest(
  doer: Doer,
  input: ChangeRequestInput,
): Promise<Result<LoggedCommission, AnyRefusal>> {
  const { requestKey, commissionId, ...asked } = input;
  const { fields, referral } = apart(asked);
  const command = {
    name: 'changeRequest',
    permission: 'commissions.write',
    key: requestKey,
    input: { commissionId, fields, referral },
  } as const;
  return carryOut(doer, command, (tx) =>
    addWhatIsKnown(tx, doer, { commissionId, fields, referral }),
  );
}

/** What is known now: fields that are left out stay as they were. */
export type KnownNow = {
  commissionId: string;
  fields: Partial<RequestFields>;
  referral: ReferralSaid;
};

/** The step of {@link changeRequest}: joins the caller's transaction, asks nobody for leave. */
export async function addWhatIsKnown(
  tx: Tx,
  doer: Doer,
  { commissionId, fields, referral }: KnownNow,
): Promise<Result<LoggedCommission, CommissionRefusal>> {
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const { number, title, collectorId, facts } = found.value;
  const { wishedOn, ...known } = fields;
  if (!(await isBody(tx, known.bodyId))) return refuse({ code: 'unknown_body' });
  await tx.commission.update({
    where: { id: commissionId },
    data: { ...known, ...(wishedOn === undefined ? {} : { wishedOn: dateOrNull(wishedOn) }) },
    select: { id: true },
  });
  const did = 'wrote down what is known now of the request';
  await tellHistory(tx, doer, { commissionId, did, facts: { title: known.title ?? title } });
  const settle = { commissionId, collectorId, said: referral };
  const isAgreed = facts.agreement !== null;
  const settled = await settleReferral(tx, doer, { ...settle, isAgreed });
  return settled.ok ? ok({ commissionId, number }) : settled;
}

function dateOrNull(day: Day | null): Date | null {
  return day && dateFromDay(day);
}

/**
 * Adds pictures to a request that was logged before.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, unknown, ended early, handed over
 */
export async function addPictures(
  doer: Doer,
  input: AddPicturesInput,
): Promise<Result<LoggedCommission, AnyRefusal>> {
  const permission = 'commissions.write';
  const allowed = allow(doer.actor, permission);
  if (!allowed.ok) return allowed;
  const ready = await readyPictures(input.pictures);
  if (!ready.ok) return ready;
  const { requestKey, commissionId, caption } = input;
  const shas = ready.value.map((picture) => picture.sha256);
  const said = { commissionId, caption, shas };
  const command = { name: 'addPictures', permission, key: requestKey, input: said } as const;
  return carryOut(doer, command, async (tx) => {
    const found = await findOpen(tx, doer, commissionId);
    if (!found.ok) return found;
    await keepPictures(tx, doer, { commissionId, caption, pictures: ready.value });
    const facts = { pictures: ready.value.length };
    await tellHistory(tx, doer, { commissionId, did: 'added pictures to the request', facts });
    return ok({ commissionId, number: found.value.number });
  });
}
