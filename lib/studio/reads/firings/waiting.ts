import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { outlineKept } from '@/lib/studio/input/firings';
import { moveColumns, readMove } from '@/lib/studio/reads/moving';
import { piecesAt, standingsOf, type Move } from '@/lib/studio/rules';
import { againHere } from '@/lib/studio/rules/firings/again';
import type { WaitingForFire } from '@/lib/studio/rules/firings/load';
import {
  firstKnown,
  lyingOf,
  lyingOfOutline,
  lyingOfParts,
  type PieceLying,
} from '@/lib/studio/rules/firings/lying';
import { firingKindOf, type FiringKind } from '@/lib/studio/rules/firings/schedule';
import { readLoadsOfSteps, type LoadsOfStep } from './loads';

/** A part of a numbered drawing that stands at a kiln, free for a load. */
export type PartFree = {
  partId: string;
  number: number;
  make: number;
  /** What it covers of a shelf; null where its drawing has no size. */
  box: Pick<PieceLying, 'widthUm' | 'depthUm'> | null;
  lying: PieceLying | null;
};

/** Pieces of a job that stand at a firing step. */
export type AtKiln = WaitingForFire & {
  title: string;
  stepName: string;
  kind: FiringKind;
  cone: string;
  commissionNumber: number | null;
  /** All that stand there, those in loads and kilns too. */
  standing: number;
  /** Of those, how many are in a kiln that was lit. */
  inFire: number;
  /** Of those, how many lie in loads that are planned. */
  planned: number;
  hasParts: boolean;
  freeParts: readonly PartFree[];
  /** Its route and moves, for the question whether it has dried. */
  steps: readonly { kind: string; shortestDays: number }[];
  moves: readonly Move[];
  standings: readonly number[];
};

type Narrow = {
  cone?: string;
  kind?: FiringKind;
  jobIds?: readonly string[];
  /** A load whose own lines do not count as taken. */
  exceptFiringId?: string;
};

const placeRows = z.array(
  z.object({
    ...{ jobId: z.uuid(), position: z.number(), cone: z.string(), peg: z.string() },
    ...{ name: z.string(), standing: z.number() },
  }),
);
type Place = z.infer<typeof placeRows>[number];

/**
 * What stands at firing steps, job by job, in the order of the jobs' numbers. Pieces of which all
 * are in kilns or other loads are there too, with none free.
 *
 * @param narrow to a cone, a kind of firing, or some jobs; nothing for all of them
 */
export async function readAtKilns(
  from: Prisma.TransactionClient,
  narrow: Narrow = {},
): Promise<AtKiln[]> {
  const places = await readPlaces(from, narrow);
  if (places.length === 0) return [];
  const jobIds = [...new Set(places.map(({ jobId }) => jobId))];
  const jobs = await from.job.findMany({
    where: { id: { in: jobIds } },
    select: jobColumns,
    orderBy: { number: 'asc' },
  });
  const loads = await readLoadsOfSteps(from, jobIds, narrow.exceptFiringId);
  return jobs.flatMap((job) =>
    places
      .filter(({ jobId }) => jobId === job.id)
      .map((place) => atKiln(job, place, loads.of(job.id, place.position))),
  );
}

async function readPlaces(from: Prisma.TransactionClient, narrow: Narrow): Promise<Place[]> {
  const { cone, kind, jobIds } = narrow;
  const byCone = cone === undefined ? Prisma.empty : Prisma.sql`AND step.cone = ${cone}`;
  const byJob = jobIds ? Prisma.sql`AND step."jobId" = ANY(${[...jobIds]}::uuid[])` : Prisma.empty;
  const rows = await from.$queryRaw(Prisma.sql`
    SELECT step."jobId", step.position, step.cone, step.peg, step.name, flow.pieces AS standing
    FROM "JobStep" step
    JOIN (
      SELECT "jobId", place, sum(pieces)::int AS pieces FROM (
        SELECT "jobId", "toPosition" AS place, pieces FROM "JobMove"
        UNION ALL SELECT "jobId", "fromPosition", -pieces FROM "JobMove"
      ) each GROUP BY 1, 2
    ) flow ON flow."jobId" = step."jobId" AND flow.place = step.position
    WHERE step.kind = 'fire' AND flow.pieces > 0 ${byCone} ${byJob}
    ORDER BY step."jobId", step.position`);
  const places = placeRows.parse(rows);
  return kind ? places.filter(({ peg }) => firingKindOf(peg) === kind) : places;
}

const sizeColumns = { widthUm: true, heightUm: true, depthUm: true } as const;

const jobColumns = {
  ...{ id: true, number: true, title: true, technique: true, pieces: true, neededOn: true },
  ...sizeColumns,
  sku: { select: { ...sizeColumns, kind: true } },
  commission: {
    select: {
      number: true,
      agreements: { select: { promisedOn: true }, orderBy: { version: 'desc' }, take: 1 },
    },
  },
  steps: {
    select: { name: true, kind: true, shortestDays: true },
    orderBy: { position: 'asc' },
  },
  moves: { select: moveColumns, orderBy: { id: 'asc' } },
  partMap: { select: { widthUm: true, heightUm: true } },
  parts: {
    select: {
      ...{ id: true, number: true, make: true },
      shape: { select: { outline: true } },
      moves: {
        select: { move: { select: { toPosition: true } } },
        orderBy: { moveId: 'desc' },
        take: 1,
      },
    },
    orderBy: [{ number: 'asc' }, { make: 'asc' }],
  },
} as const satisfies Prisma.JobSelect;

type JobRow = Prisma.JobGetPayload<{ select: typeof jobColumns }>;

function atKiln(job: JobRow, place: Place, loads: LoadsOfStep): AtKiln {
  const moves = job.moves.map(readMove);
  const route = { pieces: job.pieces, steps: job.steps };
  const here = standingsOf(route, moves).find(({ position }) => position === place.position);
  const pieces = Math.max(0, place.standing - loads.inFire - loads.planned);
  const freeParts = partsFree(job, place.position, loads.partIds);
  const needed = job.neededOn ?? job.commission?.agreements[0]?.promisedOn;
  return {
    ...{ jobId: job.id, jobNumber: job.number, title: job.title, position: place.position },
    ...{ stepName: place.name, kind: firingKindOf(place.peg), cone: place.cone },
    ...{ pieces, againPieces: Math.min(pieces, againHere(loads.lit)) },
    ...{ standing: place.standing, inFire: loads.inFire, planned: loads.planned },
    commissionNumber: job.commission?.number ?? null,
    sinceOn: here?.sinceOn ?? null,
    neededOn: needed ? dayFromDate(needed) : null,
    lying: lyingOfJob(job, freeParts),
    hasParts: job.parts.length > 0,
    freeParts,
    parts: freeParts.flatMap(({ partId, lying }) => (lying ? [{ partId, lying }] : [])),
    ...{ steps: job.steps, moves, standings: piecesAt(route, moves) },
  };
}

const vessels = ['lamp', 'planter', 'bowl'];

/** How one piece of a job lies; of a numbered drawing the mean of the parts that go in. */
function lyingOfJob(job: JobRow, parts: readonly PartFree[]): PieceLying | null {
  const size = sizeOf(job);
  const ofParts = lyingOfParts(
    parts.map(({ box }) => box),
    size.depthUm,
  );
  const isVessel = job.sku ? vessels.includes(job.sku.kind) : job.technique === 'thrown';
  return ofParts ?? lyingOf(size, isVessel);
}

/** The size of a job, or else of the piece of the stock list that it makes. */
function sizeOf({ sku, ...job }: JobRow) {
  return {
    widthUm: firstKnown(job.widthUm, sku?.widthUm),
    heightUm: firstKnown(job.heightUm, sku?.heightUm),
    depthUm: firstKnown(job.depthUm, sku?.depthUm),
  };
}

function partsFree(job: JobRow, position: number, taken: ReadonlySet<string>): PartFree[] {
  const heightUm = sizeOf(job).depthUm;
  return job.parts
    .filter(({ id, moves }) => (moves[0]?.move.toPosition ?? 0) === position && !taken.has(id))
    .map(({ id, number, make, shape }) => {
      const box = boxOf(shape.outline, job.partMap, heightUm ?? 0);
      return { partId: id, number, make, box, lying: heightUm === null ? null : box };
    });
}

/** How a part lies by its outline; null where its drawing has no size. */
export function boxOf(
  outline: Prisma.JsonValue,
  drawing: { widthUm: number; heightUm: number } | null,
  heightUm: number,
): PieceLying | null {
  const corners = outlineKept.safeParse(outline);
  if (!corners.success || !drawing) return null;
  return lyingOfOutline(corners.data, drawing, heightUm);
}

/** The day on which the longest waiting of these came to the kiln; null where none waits. */
export function longestSince(waiting: readonly Pick<AtKiln, 'sinceOn'>[]): Day | null {
  return (
    waiting
      .flatMap(({ sinceOn }) => sinceOn ?? [])
      .toSorted()
      .at(0) ?? null
  );
}
