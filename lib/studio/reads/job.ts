import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { outside, placeName, type LossCause } from '@/lib/studio/rules';
import { namesOf } from './firings/names';
import { readBurning } from './moving';
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
  /** Of a loss: why, and what was seen. */
  cause: LossCause | null;
  note: string;
  /** The firing that they came out of. */
  firingNumber: number | null;
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
      cause: true,
      note: true,
      firing: { select: { number: true } },
      undoneBy: { select: { id: true } },
    },
    orderBy: { id: 'desc' },
    take: 400,
  });
  const burning = await readBurning(db(), [row.id]);
  const names = await namesOf(db(), [row.openedById, ...moves.map((move) => move.staffId)]);
  const { openedAt, openedById, ...job } = row;
  return {
    ...readJob(job, todayOn, burning.get(row.id)),
    openedAt,
    openedBy: names.get(openedById) ?? 'somebody',
    told: moves.map(({ staffId, undoesId, undoneBy, firing, ...move }) => ({
      ...move,
      id: move.id.toString(),
      movedOn: dayFromDate(move.movedOn),
      by: names.get(staffId) ?? 'somebody',
      firingNumber: firing?.number ?? null,
      isUndoing: undoesId !== null,
      isUndone: undoneBy !== null,
    })),
  };
}

/** A move as it is told right after it was made. */
export type MoveJustMade = {
  id: string;
  jobNumber: number;
  jobTitle: string;
  pieces: number;
  toName: string;
  /** Why, when they were lost; and how many were begun anew for them. */
  cause: LossCause | null;
  begunAnew: number;
  isBegunAnew: boolean;
  /** Where those that came into stock stand. */
  intoStock: string | null;
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
      fromPosition: true,
      toPosition: true,
      undoesId: true,
      cause: true,
      madeGoodBy: { select: { pieces: true } },
      intoStock: { select: { place: { select: { name: true } } }, take: 1 },
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
    cause: row.toPosition === outside ? row.cause : null,
    begunAnew: row.madeGoodBy.reduce((sum, move) => sum + move.pieces, 0),
    isBegunAnew: row.fromPosition === outside,
    intoStock: row.intoStock[0]?.place.name ?? null,
    isUndoing: row.undoesId !== null,
    isUndone: row.undoneBy !== null,
  };
}
