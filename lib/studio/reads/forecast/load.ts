import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import type { ClosedSpan, InKiln, JobInLoad } from '@/lib/studio/rules/forecast/load/facts';
import { loadOf, type StudioLoad } from '@/lib/studio/rules/forecast/load/load';
import { beginColumns, moveColumns, readBegin, readMove } from '../moving';
import { readStep, stepColumns } from '../routes';
import { getStudioSettings } from '../settings';
import { readInKilns, readKilnFacts } from './kilns';
import { readLossCounts } from './loss-counts';

/** The most open jobs that are forecast together; the oldest come first. */
export const loadJobsMax = 300;

/**
 * All open jobs and the studio they share, as they are written down.
 *
 * A job is open while fewer are finished than are wanted; one of a commission that has ended is not.
 */
export async function readStudioLoad(
  from: Prisma.TransactionClient,
  todayOn: Day,
): Promise<StudioLoad> {
  const settings = await getStudioSettings(from);
  const inKilns = await readInKilns(from);
  const holding = new Set([...inKilns.values()].flat().map(({ kilnId }) => kilnId));
  const { closedWeekdays, dryingPercents, promiseInHundred, roomAroundUm } = settings;
  return loadOf({
    ...{ todayOn, closedWeekdays, dryingPercents, promiseInHundred, roomAroundUm },
    answerDays: await readAnswerDays(from),
    benches: await from.bench.findMany({
      select: { id: true, name: true, atOnce: true },
      orderBy: { name: 'asc' },
    }),
    kilns: await readKilnFacts(from, todayOn, holding),
    closed: await readClosed(from),
    losses: await readLossCounts(from),
    jobs: await readJobsInLoad(from, inKilns, todayOn),
  });
}

async function readAnswerDays(from: Prisma.TransactionClient): Promise<number> {
  const row = await from.commissionTerms.findUnique({
    where: { id: 1 },
    select: { answerDays: true },
  });
  invariant(row, 'The terms of commissions are one row that is always there.');
  return row.answerDays;
}

async function readClosed(from: Prisma.TransactionClient): Promise<ClosedSpan[]> {
  const rows = await from.studioClosed.findMany({ orderBy: [{ fromOn: 'asc' }, { id: 'asc' }] });
  return rows.map(({ fromOn, toOn, kilnId, benchId }) => ({
    ...{ kilnId, benchId },
    fromOn: dayFromDate(fromOn),
    toOn: dayFromDate(toOn),
  }));
}

const size = { widthUm: true, heightUm: true, depthUm: true } as const;

const jobColumns = {
  ...{ id: true, number: true, title: true, technique: true, pieces: true, wanted: true },
  ...{ ...size, neededOn: true },
  steps: { select: stepColumns, orderBy: { position: 'asc' } },
  moves: { select: moveColumns, orderBy: { id: 'asc' } },
  sku: { select: size },
  order: { select: { readyAboutOn: true } },
  commission: {
    select: {
      ...beginColumns,
      id: true,
      collector: { select: { name: true } },
      agreements: {
        select: { depositCents: true, clayFromOn: true, promisedOn: true },
        orderBy: { version: 'desc' },
        take: 1,
      },
    },
  },
} as const satisfies Prisma.JobSelect;

async function readJobsInLoad(
  from: Prisma.TransactionClient,
  inKilns: ReadonlyMap<string, InKiln[]>,
  todayOn: Day,
): Promise<JobInLoad[]> {
  const rows = await from.job.findMany({
    where: { id: { in: await readOpenJobIds(from) } },
    select: jobColumns,
    orderBy: { number: 'asc' },
  });
  return rows.map((row) => {
    const { id, number, title, technique, pieces, wanted, commission } = row;
    const { widthUm, heightUm, depthUm } = row;
    const needed =
      row.neededOn ?? commission?.agreements[0]?.promisedOn ?? row.order?.readyAboutOn ?? null;
    return {
      ...{ id, number, title, technique, pieces, wanted, size: { widthUm, heightUm, depthUm } },
      steps: row.steps.map(readStep),
      moves: row.moves.map(readMove),
      inKilns: inKilns.get(id) ?? [],
      skuSize: row.sku,
      neededOn: needed && dayFromDate(needed),
      commission: commission && {
        ...{ id: commission.id, number: commission.number, collector: commission.collector.name },
        begin: readBegin(commission, todayOn),
      },
    };
  });
}

/** Jobs of which fewer are finished than are wanted, and whose commission goes on. */
async function readOpenJobIds(from: Prisma.TransactionClient): Promise<string[]> {
  const found = await from.$queryRaw`
    SELECT job.id FROM "Job" job
    CROSS JOIN LATERAL (
      SELECT count(*)::int AS steps FROM "JobStep" WHERE "jobId" = job.id) route
    CROSS JOIN LATERAL (
      SELECT coalesce(sum(pieces) FILTER (WHERE "toPosition" > route.steps), 0)
        - coalesce(sum(pieces) FILTER (WHERE "fromPosition" > route.steps), 0) AS finished
      FROM "JobMove" WHERE "jobId" = job.id) moved
    WHERE moved.finished < job.wanted AND NOT EXISTS (
      SELECT FROM "CommissionEnding" ending WHERE ending."commissionId" = job."commissionId")
    ORDER BY job.number
    LIMIT ${loadJobsMax}`;
  return z
    .array(z.object({ id: z.uuid() }))
    .parse(found)
    .map(({ id }) => id);
}
