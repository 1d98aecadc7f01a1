import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { ok, type Result } from '@/lib/platform/result';
import { planFile, type FilePlan } from './reads/plan-file';
import { fileKinds, loadKinds, loadNeeds, standingOf } from './rules/plan';
import type { LoadKind, LoadStanding } from './rules/plan';
import type { FileRefusal } from './rules/refusals';

/** How many lines of a file are shown on one page. */
export const linesAPage = 100;
/** How many files before this one are listed. */
const loadsListed = 12;

/** A file that was brought in, or is under way. */
export type Load = {
  id: string;
  kind: LoadKind;
  fileName: string;
  rowsTotal: number;
  rowsDone: number;
  startedAt: Date;
  endedAt: Date | null;
  outcome: string;
  by: string;
  standing: LoadStanding;
};

const select = {
  ...{ id: true, kind: true, fileName: true, rowsTotal: true, rowsDone: true, staffId: true },
  ...{ startedAt: true, seenAt: true, stopAskedAt: true, endedAt: true, outcome: true },
} as const;

/**
 * A file that is brought in: how far it is, and how it ended.
 *
 * @returns null when there is none of that id that the actor may bring in
 */
export async function findLoad(actor: Actor, id: string, now: Date): Promise<Load | null> {
  assertAllowed(actor, 'stock.load');
  if (!z.uuid().safeParse(id).success) return null;
  const rows = await db().dataLoad.findMany({
    where: { id, kind: { in: kindsFor(actor) } },
    select,
  });
  return (await told(rows, now))[0] ?? null;
}

/** The latest files that were brought in or tried, the newest first; twelve at most. */
export async function listLoads(actor: Actor, now: Date): Promise<Load[]> {
  assertAllowed(actor, 'stock.load');
  const rows = await db().dataLoad.findMany({
    where: { kind: { in: kindsFor(actor) } },
    select,
    orderBy: [{ startedAt: 'desc' }, { id: 'desc' }],
    take: loadsListed,
  });
  return told(rows, now);
}

function kindsFor(actor: Actor): LoadKind[] {
  return loadKinds.filter((kind) => isAllowed(actor.roles, loadNeeds[kind]));
}

type LoadRow = {
  id: string;
  kind: string;
  fileName: string;
  rowsTotal: number;
  rowsDone: number;
  staffId: string;
  startedAt: Date;
  seenAt: Date;
  stopAskedAt: Date | null;
  endedAt: Date | null;
  outcome: string;
};

async function told(rows: readonly LoadRow[], now: Date): Promise<Load[]> {
  const ids = rows.map((row) => row.id);
  const staffIds = rows.map((row) => row.staffId);
  const [kept, staff] = await Promise.all([
    db().commandKey.findMany({ where: { key: { in: ids } }, select: { key: true } }),
    db().staff.findMany({ where: { id: { in: staffIds } }, select: { id: true, name: true } }),
  ]);
  const keptIds = new Set(kept.map((row) => row.key));
  const names = new Map(staff.map((row) => [row.id, row.name]));
  return rows.flatMap(({ staffId, seenAt, stopAskedAt, ...row }): Load[] => {
    const kind = loadKinds.find((each) => each === row.kind);
    if (!kind) return [];
    const life = { isKept: keptIds.has(row.id), endedAt: row.endedAt, seenAt, stopAskedAt };
    const by = names.get(staffId) ?? 'someone';
    return [{ ...row, kind, by, standing: standingOf(life, now) }];
  });
}

/** A file that was looked at, with what it would do now. */
export type FileShown = {
  id: string;
  fileName: string;
  shownAt: Date;
  by: string;
  planned: Result<FilePlan, FileRefusal>;
};

/**
 * A file that was looked at, line by line against what is there now.
 *
 * @returns null when there is none of that id
 */
export async function findFileShown(
  actor: Actor,
  id: string,
  now: Date,
): Promise<FileShown | null> {
  assertAllowed(actor, 'data.bring_in');
  if (!z.uuid().safeParse(id).success) return null;
  const row = await db().dataLoad.findUnique({
    where: { id },
    select: { ...select, file: { select: { bytes: true } } },
  });
  const kind = fileKinds.find((each) => row?.kind === `${each} shown`);
  if (!row || !kind) return null;
  const where = { id: row.staffId };
  const staff = await db().staff.findUnique({ where, select: { name: true } });
  const planned = await planFile(db(), { kind, bytes: row.file.bytes, now });
  const { fileName, startedAt: shownAt } = row;
  const result = planned.ok ? ok(planned.value) : planned;
  return { id, fileName, shownAt, by: staff?.name ?? 'someone', planned: result };
}
