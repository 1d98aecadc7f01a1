import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { findForWriting, tellHistory } from '@/lib/commissions/writes/carry-out';
import { fileToKeep, readyPictures, type ReadyPicture } from '@/lib/files/ready';
import { dateFromDay } from '@/lib/dates/rules';
import { keepFile } from '@/lib/files/writes';
import type { KeepSurveyInput } from '@/lib/installation/input/survey/survey';
import { loadSurvey, type SurveyKept } from '@/lib/installation/reads/survey/kept';
import type { AnyWallRefusal } from '@/lib/installation/rules/survey/refusals';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** The survey that was kept, and of which commission. */
export type SurveyAdded = { surveyId: string; version: number; commissionNumber: number };

/**
 * Keeps a wall as somebody looked at it: a new version, whole. The one before stays as it was.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, unknown commission, ended early, a day to come, somebody wrote it down meanwhile
 */
export async function keepSurvey(
  doer: Doer,
  input: KeepSurveyInput,
): Promise<Result<SurveyAdded, AnyWallRefusal>> {
  const allowed = allow(doer.actor, 'installation.do');
  if (!allowed.ok) return allowed;
  const { requestKey: key, pictures, ...said } = input;
  const ready = await readyPictures(pictures);
  if (!ready.ok) return ready;
  const wanted = { ...said, pictures: ready.value.map(({ sha256 }) => sha256) };
  const command = { key, name: 'keepSurvey', staffId: doer.actor.id, input: wanted, at: doer.at };
  return onceOnly<SurveyAdded, AnyWallRefusal>(command, (tx) =>
    addSurvey(tx, doer, { ...said, pictures: ready.value }),
  );
}

/** What {@link addSurvey} keeps: as {@link keepSurvey} reads it, its pictures made ready. */
export type SurveyToAdd = Omit<KeepSurveyInput, 'requestKey' | 'pictures'> & {
  pictures: readonly ReadyPicture[];
};

/** The step of {@link keepSurvey}: joins the caller's transaction, asks nobody for leave. */
export async function addSurvey(
  tx: Tx,
  doer: Doer,
  added: SurveyToAdd,
): Promise<Result<SurveyAdded, AnyWallRefusal>> {
  const { commissionId, survey, obstacles } = added;
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  const { facts, today, number } = found.value;
  if (facts.ending) return refuse({ code: 'ended_early', endedOn: facts.ending.endedOn });
  if (survey.surveyedOn > today) return refuse({ code: 'day_to_come', on: survey.surveyedOn });
  const before = await loadSurvey(tx, commissionId);
  if (before && before.version !== added.seenVersion) return lookedMeanwhile(tx, before);
  const version = (before?.version ?? 0) + 1;
  const files = [...keptOf(before, added), ...(await newFiles(tx, doer, added.pictures))];
  const { id } = await tx.wallSurvey.create({
    data: {
      ...{ ...survey, commissionId, version, surveyedOn: dateFromDay(survey.surveyedOn) },
      ...{ staffId: doer.actor.id, at: doer.at },
      obstacles: { create: obstacles.map((one, position) => ({ ...one, position })) },
      pictures: { create: files.map((file, position) => ({ ...file, position })) },
    },
    select: { id: true },
  });
  const did = 'wrote down what the wall is like';
  await tellHistory(tx, doer, { commissionId, did, facts: { version, wall: survey.wall } });
  return ok({ surveyId: id, version, commissionNumber: number });
}

async function lookedMeanwhile(
  tx: Tx,
  { staffId, at }: SurveyKept,
): Promise<Result<SurveyAdded, AnyWallRefusal>> {
  const staff = await tx.staff.findUnique({ where: { id: staffId }, select: { name: true } });
  return refuse({ code: 'looked_at_meanwhile', by: staff?.name ?? 'Somebody', at });
}

type FileKept = { fileId: string; caption: string };

/** The pictures of the survey before that stay; others cannot be brought in by their id. */
function keptOf(before: SurveyKept | null, { keptPictures }: SurveyToAdd): FileKept[] {
  const kept = (before?.pictures ?? []).filter(({ file }) => keptPictures.includes(file.id));
  return kept.map(({ file, caption }) => ({ fileId: file.id, caption }));
}

async function newFiles(
  tx: Tx,
  doer: Doer,
  pictures: readonly ReadyPicture[],
): Promise<FileKept[]> {
  const files: FileKept[] = [];
  for (const picture of pictures) {
    const { id } = await keepFile(tx, fileToKeep(picture, doer.at));
    files.push({ fileId: id, caption: '' });
  }
  return files;
}
