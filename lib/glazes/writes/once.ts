import 'server-only';
import { createHash } from 'node:crypto';
import type { Prisma } from '@/generated/prisma/client';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit, type Fact } from '@/lib/audit/writes';
import { dayOf, type Day } from '@/lib/dates/rules';
import { keepFile, preparePicture, type PreparedPicture } from '@/lib/files/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { GlazeRefusal } from '../rules';

/** A picture made ready outside the transaction, with the hash that stands for it in a command. */
export type ReadyPicture = PreparedPicture & { sha256: string };

/** The pictures of a form by their field; null where none was chosen. */
export type ReadyPictures<Name extends string> = Readonly<Record<Name, ReadyPicture | null>>;

/**
 * Runs a command of the glaze book: asks whether the doer may keep it, makes its pictures ready,
 * then does it once.
 *
 * @param command what the key stands for; pictures count by their bytes
 */
export async function inTheBook<Name extends string, Answer extends Prisma.InputJsonValue>(
  doer: Doer,
  command: {
    name: string;
    key: string;
    input: object;
    pictures: Readonly<Record<Name, Blob | undefined>>;
  },
  work: (tx: Tx, pictures: ReadyPictures<Name>) => Promise<Result<Answer, GlazeRefusal>>,
): Promise<Result<Answer, GlazeRefusal>> {
  const allowed = allow(doer.actor, 'studio.keep');
  if (!allowed.ok) return allowed;
  const ready = await readyAll(command.pictures);
  if (!ready.ok) return ready;
  const pictures = ready.value;
  const shas = Object.values<ReadyPicture | null>(pictures).map((each) => each?.sha256 ?? null);
  const { key, name, input } = command;
  return onceOnly<Answer, GlazeRefusal>(
    { key, name, staffId: doer.actor.id, input: { ...input, shas }, at: doer.at },
    (tx) => work(tx, pictures),
  );
}

async function readyAll<Name extends string>(
  chosen: Readonly<Record<Name, Blob | undefined>>,
): Promise<Result<ReadyPictures<Name>, GlazeRefusal>> {
  const ready = {} as Record<Name, ReadyPicture | null>;
  for (const name of Object.keys(chosen) as Name[]) {
    const picture = chosen[name];
    ready[name] = null;
    if (!picture || picture.size === 0) continue;
    const prepared = await preparePicture(new Uint8Array(await picture.arrayBuffer()));
    if (!prepared.ok) return refuse({ code: 'picture_not_kept', picture: prepared.refusal });
    const sha256 = createHash('sha256').update(prepared.value.bytes).digest('hex');
    ready[name] = { ...prepared.value, sha256 };
  }
  return ok(ready);
}

/** Keeps a picture that was chosen; undefined leaves the column of a row as it is. */
export async function keepChosen(
  tx: Tx,
  doer: Doer,
  picture: ReadyPicture | null,
): Promise<string | undefined> {
  if (!picture) return undefined;
  const { bytes, mediaType, widthPx, heightPx } = picture;
  return (await keepFile(tx, { bytes, mediaType, widthPx, heightPx, at: doer.at })).id;
}

/** A measured colour as the columns of a row. */
export function starsOf(lab: readonly [string, string, string] | null) {
  return { lStar: lab?.[0] ?? null, aStar: lab?.[1] ?? null, bStar: lab?.[2] ?? null };
}

/** The gallery's day of a command. */
export async function todayOf(tx: Tx, doer: Doer): Promise<Day> {
  return dayOf(doer.at, (await getGallery(tx)).timeZone);
}

/** Writes one line of what happened to a glaze. */
export async function tellOfGlaze(
  tx: Tx,
  doer: Doer,
  line: { did: string; glazeId: string; facts: Readonly<Record<string, Fact>> },
): Promise<void> {
  const { did, glazeId, facts } = line;
  await recordAudit(tx, doer, { did, subject: 'Glaze', subjectId: glazeId, facts });
}
