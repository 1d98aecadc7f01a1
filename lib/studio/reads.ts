import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addDays, dateFromDay, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { readBurning } from './reads/moving';
import { jobColumns, readJob, type JobStanding, type StandingHere } from './reads/standing';
import { finishedPosition } from './rules';
import { benchPlace } from './rules/routes';

/** The most jobs that the bench shows; the oldest come first. */
export const benchJobsMax = 300;
/** How long pieces that were finished stay in sight, in days. */
export const finishedInSightDays = 14;

/** Pieces of one job that stand at one step. */
export type OnBench = { job: JobStanding; here: StandingHere };

/** One step of the bench, and what stands there. */
export type BenchRow = { name: string; pieces: number; standing: readonly OnBench[] };

/** The bench from clay to finished: only steps at which something stands. */
export type Bench = {
  notBegun: readonly OnBench[];
  rows: BenchRow[];
  finished: readonly OnBench[];
};

/**
 * What stands where in the studio, in bench order.
 *
 * Within a step the longest waiting comes first. Jobs of a commission that has ended are shown
 * only while pieces of theirs are under way.
 */
export async function getBench(actor: Actor, todayOn: Day): Promise<Bench> {
  assertAllowed(actor, 'studio.see');
  const jobs = await listJobsInSight(todayOn);
  const all = jobs.flatMap((job) => job.standings.map((here) => ({ job, here })));
  const notBegun = all.filter((one) => one.here.position === 0 && !one.job.commission?.hasEnded);
  const finished = all.filter(
    ({ job, here }) =>
      here.position === finishedPosition(job) &&
      finishedSince(job, addDays(todayOn, -finishedInSightDays)),
  );
  return { notBegun, rows: rowsOf(all.filter((one) => one.here.step !== null)), finished };
}

function finishedSince(job: JobStanding, sinceOn: Day): boolean {
  return job.moves.some((move) => move.toPosition > job.steps.length && move.movedOn >= sinceOn);
}

function rowsOf(standing: readonly OnBench[]): BenchRow[] {
  const places = new Map<string, OnBench[]>();
  for (const one of standing) {
    const row = places.get(one.here.name) ?? [];
    row.push(one);
    places.set(one.here.name, row);
  }
  return [...places]
    .map(([name, here]) => ({
      name,
      place: placeOf(here[0]),
      pieces: here.reduce((sum, one) => sum + one.here.pieces, 0),
      standing: here.toSorted((one, other) =>
        (one.here.sinceOn ?? '').localeCompare(other.here.sinceOn ?? ''),
      ),
    }))
    .toSorted((one, other) => one.place - other.place || one.name.localeCompare(other.name))
    .map(({ name, pieces, standing: jobs }) => ({ name, pieces, standing: jobs }));
}

function placeOf(one: OnBench | undefined): number {
  if (!one?.here.step) return 0;
  const { step, position } = one.here;
  return benchPlace({ peg: step.peg, position, steps: one.job.steps.length });
}

/** Pieces that have stood at their step beyond its longest days; the longest first. */
export async function listStandingTooLong(actor: Actor, todayOn: Day): Promise<OnBench[]> {
  assertAllowed(actor, 'studio.see');
  const jobs = await listJobsInSight(todayOn);
  return jobs
    .flatMap((job) => job.standings.map((here) => ({ job, here })))
    .filter((one) => one.here.tooLongDays > 0)
    .toSorted((one, other) => other.here.tooLongDays - one.here.tooLongDays);
}

async function listJobsInSight(todayOn: Day): Promise<JobStanding[]> {
  const since = dateFromDay(addDays(todayOn, -finishedInSightDays));
  const found = await db().$queryRaw`
    SELECT job.id FROM "Job" job
    WHERE pieces_under_way(job.id) > 0
      OR EXISTS (SELECT 1 FROM "JobMove" WHERE "jobId" = job.id AND "movedOn" >= ${since}::date)
    ORDER BY job.number
    LIMIT ${benchJobsMax}`;
  const ids = z.array(z.object({ id: z.uuid() })).parse(found);
  const rows = await db().job.findMany({
    where: { id: { in: ids.map((row) => row.id) } },
    select: jobColumns,
    orderBy: { number: 'asc' },
  });
  const burning = await readBurning(
    db(),
    rows.map((row) => row.id),
  );
  return rows.map((row) => readJob(row, todayOn, burning.get(row.id)));
}

/** The jobs of a commission, the first opened first. */
export async function listJobsOfCommission(
  actor: Actor,
  commissionId: string,
  todayOn: Day,
): Promise<JobStanding[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await db().job.findMany({
    where: { commissionId },
    select: jobColumns,
    orderBy: { number: 'asc' },
    take: 50,
  });
  return rows.map((row) => readJob(row, todayOn));
}

/** A piece of the stock list that a job can be opened for. */
export type PieceToMake = { skuId: string; words: string };

/** The pieces of the stock list, for choosing one to make; at most 500, by title. */
export async function listPiecesToMake(actor: Actor): Promise<PieceToMake[]> {
  assertAllowed(actor, 'studio.move');
  const rows = await db().sku.findMany({
    select: {
      id: true,
      code: true,
      design: { select: { title: true } },
      colourway: { select: { name: true } },
    },
    orderBy: [{ design: { title: 'asc' } }, { code: 'asc' }],
    take: 500,
  });
  return rows.map((row) => ({
    skuId: row.id,
    words: `${row.design.title}, ${row.colourway.name} · ${row.code}`,
  }));
}
