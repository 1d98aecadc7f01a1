import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { placeName } from '@/lib/studio/rules';
import { jobColumns, readJob, type JobStanding } from './standing';

/** A move of a job with who made it, and whether it can be taken back. */
export type MoveTold = {
  id: string;
  pieces: number;
  fromPosition: number;
  toPosition: number;
  movedOn: Day;
  at: Date;
  by: string;
  isUndoing: boolean;
  isUndone: boolean;
};

/** A job with who moved what when, the last move first. */
export type JobTold = JobStanding & { openedAt: Date; openedBy: string; told: readonly MoveTold[] };

/** One job by its number; null when there is none. */
export async function findJob(actor: Actor, number: number, todayOn: Day): Promise<JobTold | null> {
  assertAllowed(actor, 'studio.see');
  const row = await db().job.findUnique({
    where: { number },
    select: { ...jobColumns, openedAt: true, openedById: true },
  });
  if (!row) return null;
  const moves = await db().jobMove.findMany({
    where: { jobId: row.id },
    select: {
      id: true,
      pieces: true,
      fromPosition: true,
      toPosition: true,
      movedOn: true,
      at: true,
      staffId: true,
      undoesId: true,
      undoneBy: { select: { id: true } },
    },
    orderBy: { id: 'desc' },
    take: 400,
  });
  const names = await namesOf([row.openedById, ...moves.map((move) => move.staffId)]);
  const { openedAt, openedById, ...job } = row;
  return {
    ...readJob(job, todayOn),
    openedAt,
    openedBy: names.get(openedById) ?? 'somebody',
    told: moves.map(({ staffId, undoesId, undoneBy, ...move }) => ({
      ...move,
      id: move.id.toString(),
      movedOn: dayFromDate(move.movedOn),
      by: names.get(staffId) ?? 'somebody',
      isUndoing: undoesId !== null,
      isUndone: undoneBy !== null,
    })),
  };
}

async function namesOf(staffIds: readonly string[]): Promise<Map<string, string>> {
  const rows = await db().staff.findMany({
    where: { id: { in: [...new Set(staffIds)] } },
    select: { id: true, name: true },
  });
  return new Map(rows.map((row) => [row.id, row.name]));
}

/** A move as it is told right after it was made. */
export type MoveJustMade = {
  id: string;
  jobNumber: number;
  jobTitle: string;
  pieces: number;
  toName: string;
  isUndoing: boolean;
  isUndone: boolean;
};

/** One move by its id, for telling it and offering its undo; null when there is none. */
export async function findMove(actor: Actor, id: string): Promise<MoveJustMade | null> {
  assertAllowed(actor, 'studio.see');
  const row = await db().jobMove.findUnique({
    where: { id: BigInt(id) },
    select: {
      pieces: true,
      toPosition: true,
      undoesId: true,
      undoneBy: { select: { id: true } },
      job: {
        select: {
          number: true,
          title: true,
          pieces: true,
          steps: { select: { name: true }, orderBy: { position: 'asc' } },
        },
      },
    },
  });
  if (!row) return null;
  return {
    id,
    jobNumber: row.job.number,
    jobTitle: row.job.title,
    pieces: row.pieces,
    toName: placeName(row.job, row.toPosition),
    isUndoing: row.undoesId !== null,
    isUndone: row.undoneBy !== null,
  };
}
