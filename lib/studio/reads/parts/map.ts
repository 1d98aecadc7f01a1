import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import {
  farthestSafe,
  numbersNow,
  safeThrough,
  type NumberNow,
  type PartMade,
  type SafeThrough,
} from '@/lib/studio/rules/parts/fates';
import type { WayStep } from '@/lib/studio/rules/parts/holding';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import type { ReliefSize } from '@/lib/studio/rules/parts/sizes';
import { pegOf, type Peg, type StepKind } from '@/lib/studio/rules/routes';
import { readShapes } from './drawing';

/** A step of the route as the map needs it. */
export type MapStep = WayStep & { peg: Peg; kind: StepKind };

/** The numbered drawing of a job with where each number stands. */
export type PartMapShown = {
  jobId: string;
  jobNumber: number;
  title: string;
  commissionNumber: number | null;
  size: ReliefSize;
  shrinkagePercent: string | null;
  /** The sketch that it was traced over. */
  fileId: string | null;
  steps: readonly MapStep[];
  shapes: readonly Shape[];
  numbers: readonly NumberNow[];
  fires: readonly SafeThrough[];
  /** The fire that says most of how far it is. */
  safe: SafeThrough | null;
  /** Whether any part was moved. */
  isBegun: boolean;
};

const partColumns = {
  ...{ id: true, number: true, make: true, isSpare: true },
  moves: {
    select: {
      move: {
        select: {
          ...{ id: true, fromPosition: true, toPosition: true, movedOn: true },
          ...{ undoesId: true, cause: true },
        },
      },
    },
    orderBy: { moveId: 'asc' },
  },
  lines: {
    select: { lineId: true },
    where: { line: { firing: { lit: { isNot: null }, opened: { is: null } } } },
    take: 1,
  },
} as const satisfies Prisma.PartSelect;

const mapColumns = {
  ...{ id: true, number: true, title: true },
  body: { select: { shrinkagePercent: true } },
  commission: { select: { number: true, body: { select: { shrinkagePercent: true } } } },
  steps: { orderBy: { position: 'asc' } },
  partMap: { select: { widthUm: true, heightUm: true, fileId: true } },
  shapes: { orderBy: { number: 'asc' } },
  parts: { select: partColumns, orderBy: [{ number: 'asc' }, { make: 'asc' }] },
} as const satisfies Prisma.JobSelect;

type MapRow = Prisma.JobGetPayload<{ select: typeof mapColumns }>;

/** The piece map of a job; null when there is no such job, or it has no drawing. */
export async function findPartMap(actor: Actor, number: number): Promise<PartMapShown | null> {
  assertAllowed(actor, 'studio.see');
  const row = await db().job.findUnique({ where: { number }, select: mapColumns });
  return row?.partMap ? readMap(row, row.partMap) : null;
}

/** The piece maps of a commission's jobs, those that have a drawing, in the order of their numbers. */
export async function listPartMaps(
  actor: Actor,
  commissionNumber: number,
): Promise<PartMapShown[]> {
  assertAllowed(actor, 'studio.see');
  const rows = await db().job.findMany({
    where: { commission: { number: commissionNumber }, partMap: { isNot: null } },
    select: mapColumns,
    orderBy: { number: 'asc' },
  });
  return rows.flatMap((row) => (row.partMap ? [readMap(row, row.partMap)] : []));
}

function readMap(row: MapRow, kept: NonNullable<MapRow['partMap']>): PartMapShown {
  const { widthUm, heightUm, fileId } = kept;
  const steps = row.steps.map(readStep);
  const parts = row.parts.map(readPart);
  const spares = new Set(parts.flatMap((part) => (part.isSpare ? [part.number] : [])));
  const shapes = readShapes(row.shapes, spares);
  const numbers = numbersNow(
    shapes.map((shape) => shape.number),
    parts,
  );
  const fires = safeThrough(steps, numbers);
  const body = row.body ?? row.commission?.body;
  return {
    ...{ jobId: row.id, jobNumber: row.number, title: row.title },
    commissionNumber: row.commission?.number ?? null,
    size: { widthUm, heightUm },
    shrinkagePercent: body?.shrinkagePercent?.toString() ?? null,
    ...{ fileId, steps, shapes, numbers, fires, safe: farthestSafe(fires) },
    isBegun: parts.some(({ moves }) => moves.length > 0),
  };
}

function readStep(step: MapRow['steps'][number]): MapStep {
  const { name, kind, isTogether, shortestDays, likelyDays, longestDays } = step;
  return { name, kind, isTogether, shortestDays, likelyDays, longestDays, peg: pegOf(step.peg) };
}

function readPart({ moves, lines, ...part }: MapRow['parts'][number]): PartMade {
  return {
    ...part,
    isInKiln: lines.length > 0,
    moves: moves.map(({ move }) => ({
      ...move,
      id: move.id.toString(),
      undoesId: move.undoesId?.toString() ?? null,
      movedOn: dayFromDate(move.movedOn),
    })),
  };
}

/** What was foretold of a job the last time; null while nothing was. */
export type ForetoldLast = {
  toldOn: Day;
  in50On: Day | null;
  in80On: Day | null;
  in95On: Day | null;
};

/** The days by which a job is ready, as they were foretold last. */
export async function findForetold(actor: Actor, jobId: string): Promise<ForetoldLast | null> {
  assertAllowed(actor, 'studio.see');
  const row = await db().foretold.findFirst({
    where: { jobId, why: { not: 'asked' } },
    select: { toldOn: true, in50On: true, in80On: true, in95On: true },
    orderBy: { id: 'desc' },
  });
  if (!row) return null;
  const day = (date: Date | null) => date && dayFromDate(date);
  return {
    toldOn: dayFromDate(row.toldOn),
    in50On: day(row.in50On),
    in80On: day(row.in80On),
    in95On: day(row.in95On),
  };
}

/** A bucket that glaze can be taken from. */
export type Bucket = { id: string; number: string; glaze: string; isForThis: boolean };

/** The buckets of glaze, those that are kept for this commission first, then the newest; at most 200. */
export async function listBuckets(
  actor: Actor,
  commissionNumber: number | null,
): Promise<Bucket[]> {
  assertAllowed(actor, 'studio.see');
  const rows = await db().glazeBatch.findMany({
    select: {
      ...{ id: true, number: true, glaze: true },
      reserved: {
        where: { commission: { number: commissionNumber ?? 0 }, releasedAt: null },
        select: { id: true },
        take: 1,
      },
    },
    orderBy: [{ mixedOn: 'desc' }, { number: 'asc' }],
    take: 200,
  });
  return rows
    .map(({ reserved, ...bucket }) => ({ ...bucket, isForThis: reserved.length > 0 }))
    .toSorted((a, b) => Number(b.isForThis) - Number(a.isForThis));
}
