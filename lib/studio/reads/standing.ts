import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import {
  missingBeforeClay,
  movesThatHold,
  outside,
  placeName,
  refusalToBegin,
  standingsOf,
  type BeforeClay,
  type Move,
  type Standing,
} from '@/lib/studio/rules';
import { daysHere, daysTooLong, pegProgress, readyDays } from '@/lib/studio/rules/days';
import type { PegProgress, ReadyDays } from '@/lib/studio/rules/days';
import { cautionsAt, type RouteStep, type Technique } from '@/lib/studio/rules/routes';
import { beginColumns, moveColumns, readBegin, readMove, type Burning } from './moving';
import { readStep, stepColumns } from './routes';

/** A picture that is kept: its file and its true size in pixels. */
export type JobPicture = { fileId: string; widthPx: number; heightPx: number };

/** Pieces of a job at one position, as a page shows them. */
export type StandingHere = Standing & {
  /** The step's name, `not begun` or `finished`. */
  name: string;
  /** Where they would go next; null when they are finished. */
  nextName: string | null;
  /** The step's own facts; null before the first and after the last. */
  step: RouteStep | null;
  /** What to mind there, the kiln that comes next included. */
  cautions: readonly string[];
  /** Days they have stood there; null for pieces that never moved. */
  days: number | null;
  /** What of them is in kilns that were lit. */
  burning: readonly Burning[];
  /** How many can be moved or lost: those that are not in a lit kiln. */
  free: number;
  /** Days beyond the step's longest; 0 when they do not stand too long. */
  tooLongDays: number;
};

/** A job as pages show it: whose it is, where its pieces stand, when they should be ready. */
export type JobStanding = {
  id: string;
  number: number;
  title: string;
  technique: Technique;
  /** How many it began with, how many are to come out good, and what became of them. */
  pieces: number;
  wanted: number;
  lost: number;
  begunAnew: number;
  hasParts: boolean;
  commission: { number: number; title: string; collector: string; hasEnded: boolean } | null;
  skuCode: string | null;
  /** The day it is needed: its own, or else the one that the collector was promised. */
  neededOn: Day | null;
  picture: JobPicture | null;
  /** What its commission still waits for before the clay; empty when it may begin. */
  missing: readonly BeforeClay[];
  steps: readonly RouteStep[];
  moves: readonly Move[];
  standings: readonly StandingHere[];
  ready: ReadyDays | null;
  pegs: readonly PegProgress[];
};

const pictureColumns = { id: true, widthPx: true, heightPx: true } as const;

/** The columns of a job as pages show it, for {@link readJob}. */
export const jobColumns = {
  id: true,
  number: true,
  title: true,
  technique: true,
  pieces: true,
  wanted: true,
  partMap: { select: { jobId: true } },
  neededOn: true,
  steps: { select: stepColumns, orderBy: { position: 'asc' } },
  moves: { select: moveColumns, orderBy: { id: 'asc' } },
  sku: {
    select: {
      code: true,
      picture: { select: pictureColumns },
      design: { select: { picture: { select: pictureColumns } } },
    },
  },
  commission: {
    select: {
      ...beginColumns,
      title: true,
      collector: { select: { name: true } },
      agreements: {
        select: { depositCents: true, promisedOn: true, clayFromOn: true },
        orderBy: { version: 'desc' },
        take: 1,
      },
      sketches: {
        select: { file: { select: pictureColumns }, approvals: { select: { id: true }, take: 1 } },
        orderBy: { letter: 'desc' },
      },
      pictures: {
        select: { file: { select: pictureColumns } },
        orderBy: [{ at: 'asc' }, { id: 'asc' }],
        take: 1,
      },
    },
  },
} as const satisfies Prisma.JobSelect;

type JobRow = Prisma.JobGetPayload<{ select: typeof jobColumns }>;

/**
 * A job as pages show it, from its row.
 *
 * @param burning what of it is in kilns that were lit, from {@link readBurning}
 */
export function readJob(row: JobRow, todayOn: Day, burning: readonly Burning[] = []): JobStanding {
  const moves = row.moves.map(readMove);
  const route = { pieces: row.pieces, steps: row.steps.map(readStep), moves };
  const begin = row.commission && readBegin(row.commission, todayOn);
  return {
    id: row.id,
    number: row.number,
    title: row.title,
    technique: row.technique,
    ...route,
    wanted: row.wanted,
    lost: netTo(moves, outside),
    begunAnew: netFrom(moves, outside),
    hasParts: row.partMap !== null,
    commission: row.commission && {
      number: row.commission.number,
      title: row.commission.title,
      collector: row.commission.collector.name,
      hasEnded: row.commission.ending !== null,
    },
    skuCode: row.sku?.code ?? null,
    neededOn: neededOn(row),
    picture: pictureOf(row),
    missing: begin && refusalToBegin(begin) ? missingBeforeClay(begin) : [],
    standings: standingsOf(route, moves).map((standing) =>
      here(route, standing, { todayOn, burning }),
    ),
    ready: readyDays(route, todayOn),
    pegs: pegProgress(route),
  };
}

/** Pieces that went somewhere by moves that hold. */
function netTo(moves: readonly Move[], position: number): number {
  return sumOf(movesThatHold(moves).filter((move) => move.toPosition === position));
}

function netFrom(moves: readonly Move[], position: number): number {
  return sumOf(movesThatHold(moves).filter((move) => move.fromPosition === position));
}

function sumOf(moves: readonly Move[]): number {
  return moves.reduce((sum, move) => sum + move.pieces, 0);
}

function here(
  route: { pieces: number; steps: readonly RouteStep[] },
  standing: Standing,
  of: { todayOn: Day; burning: readonly Burning[] },
): StandingHere {
  const { todayOn } = of;
  const { position, sinceOn } = standing;
  const step = route.steps[position - 1] ?? null;
  const burning = of.burning.filter((one) => one.position === position);
  const free = standing.pieces - burning.reduce((sum, one) => sum + one.pieces, 0);
  return {
    ...standing,
    name: placeName(route, position),
    nextName: position > route.steps.length ? null : placeName(route, position + 1),
    step,
    cautions: cautionsAt(route.steps, position),
    burning,
    free,
    days: daysHere(sinceOn, todayOn),
    tooLongDays: step ? daysTooLong(withItsWait(step), sinceOn, todayOn) : 0,
  };
}

function neededOn(row: JobRow): Day | null {
  const day = row.neededOn ?? row.commission?.agreements[0]?.promisedOn;
  return day ? dayFromDate(day) : null;
}

/** Pieces wait for a kiln until it is full: two weeks of that are nothing to speak of. */
const kilnWaitDays = 14;

function withItsWait(step: RouteStep): Pick<RouteStep, 'longestDays'> {
  return step.kind === 'fire' ? { longestDays: step.longestDays + kilnWaitDays } : step;
}

type FileRow = { id: string; widthPx: number | null; heightPx: number | null };

/** A sketch that was said yes to first, then the latest, then what was asked for, then the design. */
function pictureOf(row: JobRow): JobPicture | null {
  const { commission, sku } = row;
  const sketches = commission?.sketches ?? [];
  const candidates: readonly (FileRow | null | undefined)[] = [
    sketches.find((one) => one.approvals.length > 0)?.file,
    sketches[0]?.file,
    commission?.pictures[0]?.file,
    sku?.picture,
    sku?.design.picture,
  ];
  return candidates.map(measured).find((picture) => picture !== null) ?? null;
}

function measured(file: FileRow | null | undefined): JobPicture | null {
  if (!file || file.widthPx === null || file.heightPx === null) return null;
  return { fileId: file.id, widthPx: file.widthPx, heightPx: file.heightPx };
}
