import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { scheduleKept } from '@/lib/studio/input/firings';
import { coolBy, halvingOf, type CoolBy } from '@/lib/studio/rules/firings/curve';
import { piecesToLay } from '@/lib/studio/rules/firings/load';
import type { PieceLying } from '@/lib/studio/rules/firings/lying';
import type { Outcome } from '@/lib/studio/rules/firings/opening';
import { fillOf, layOnShelves, type Fill, type Layout } from '@/lib/studio/rules/firings/packing';
import type { FiringStand } from '@/lib/studio/rules/firings/planning';
import { firingKindOf, type FiringKind } from '@/lib/studio/rules/firings/schedule';
import { firingTime, type Firing } from '@/lib/studio/rules/kilns/firing';
import type { KilnFacts } from '@/lib/studio/rules/kilns/keeping';
import type { LossCause } from '@/lib/studio/rules';
import { kilnColumns, readKilnFacts } from '../kilns/facts';
import { getStudioSettings } from '../settings';
import { namesOf } from './names';
import { boxOf } from './waiting';

/** How pieces of a line came out. */
export type ResultTold = {
  outcome: Outcome;
  pieces: number;
  cause: LossCause | null;
  note: string;
};

/** A line of a load, with whose it is. */
export type LineOfLoad = PieceLying & {
  id: string;
  jobId: string;
  jobNumber: number;
  title: string;
  position: number;
  pieces: number;
  isAgain: boolean;
  parts: readonly { partId: string; number: number; make: number; lying: PieceLying | null }[];
  results: readonly ResultTold[];
};

/** What a kiln read, who read it. */
export type ReadingTold = { id: string; at: Date; celsius: number; note: string; by: string };

/** One firing with everything that is known of it. */
export type FiringTold = {
  id: string;
  number: number;
  kilnId: string;
  kiln: KilnFacts;
  cone: string;
  kind: FiringKind;
  isPlanned: boolean;
  stand: FiringStand;
  schedule: Firing;
  plannedOn: Day;
  note: string;
  lines: readonly LineOfLoad[];
  layout: Layout;
  fill: Fill;
  lit: { on: Day; at: Date; by: string; saidOfDry: string; meterKwh: string | null } | null;
  readings: readonly ReadingTold[];
  /** When it will be cool; null unless it burns. */
  cool: CoolBy | null;
  opened: {
    at: Date;
    on: Day;
    by: string;
    celsius: number;
    wattHours: number;
    isMetered: boolean;
    costCents: bigint;
    coneFell: string;
  } | null;
};

/** The columns of a firing with everything of it, for {@link readFiring}. */
export const firingColumns = {
  ...{ id: true, number: true, kilnId: true, cone: true, peg: true, isPlanned: true },
  ...{ schedule: true, plannedOn: true, note: true, calledOffAt: true, madeById: true },
  kiln: { select: kilnColumns },
  lines: {
    select: {
      ...{ id: true, jobId: true, position: true, pieces: true, isAgain: true },
      ...{ widthUm: true, depthUm: true, heightUm: true },
      job: {
        select: {
          ...{ number: true, title: true },
          partMap: { select: { widthUm: true, heightUm: true } },
        },
      },
      parts: {
        select: {
          partId: true,
          part: { select: { number: true, make: true, shape: { select: { outline: true } } } },
        },
        orderBy: [{ part: { number: 'asc' } }, { part: { make: 'asc' } }],
      },
      results: {
        select: { outcome: true, pieces: true, cause: true, note: true },
        orderBy: { outcome: 'asc' },
      },
    },
    orderBy: [{ job: { number: 'asc' } }, { position: 'asc' }],
  },
  lit: true,
  readings: { orderBy: [{ at: 'asc' }, { id: 'asc' }] },
  opened: true,
} as const satisfies Prisma.FiringSelect;

type FiringRow = Prisma.FiringGetPayload<{ select: typeof firingColumns }>;

/** One firing, also inside a transaction; null when there is none. */
export async function loadFiring(
  from: Prisma.TransactionClient,
  where: { id: string } | { number: number },
): Promise<FiringTold | null> {
  const row = await from.firing.findUnique({ where, select: firingColumns });
  if (!row) return null;
  const { roomAroundUm } = await getStudioSettings(from);
  const staffIds = [row.lit, row.opened, ...row.readings].flatMap((each) => each?.staffId ?? []);
  const names = await namesOf(from, staffIds);
  const earlierHalving = await readEarlierHalving(from, row);
  return readFiring(row, { names, earlierHalving, roomAroundUm });
}

type Beside = {
  names: ReadonlyMap<string, string>;
  earlierHalving: number | null;
  roomAroundUm: number;
};

function readFiring(row: FiringRow, beside: Beside): FiringTold {
  const kiln = readKilnFacts(row.kiln);
  const lines = row.lines.map(readLine);
  const layout = layoutOf(kiln, lines, beside.roomAroundUm);
  const by = (staffId: string): string => beside.names.get(staffId) ?? 'Somebody';
  const told = {
    ...{ id: row.id, number: row.number, kilnId: row.kilnId, kiln, cone: row.cone },
    ...{ kind: firingKindOf(row.peg), isPlanned: row.isPlanned, stand: standOf(row) },
    ...{ schedule: scheduleKept.parse(row.schedule), note: row.note },
    ...{ plannedOn: dayFromDate(row.plannedOn), lines, layout },
    fill: fillOf(kiln, layout, beside.roomAroundUm),
    lit: row.lit && readLit(row.lit, by),
    readings: row.readings.map(({ id, at, celsius, note, staffId }) => ({
      ...{ id: id.toString(), at, celsius, note, by: by(staffId) },
    })),
    opened: row.opened && readOpened(row.opened, by),
  };
  return { ...told, cool: coolOf(told, beside.earlierHalving) };
}

/** How far a firing has come. */
export function standOf(row: {
  calledOffAt: Date | null;
  lit: object | null;
  opened: object | null;
}): FiringStand {
  if (row.calledOffAt) return 'called_off';
  if (row.opened) return 'opened';
  return row.lit ? 'lit' : 'planned';
}

function readLit(row: NonNullable<FiringRow['lit']>, by: (staffId: string) => string) {
  const { litOn, at, saidOfDry, meterKwh, staffId } = row;
  const on = dayFromDate(litOn);
  return { on, at, saidOfDry, by: by(staffId), meterKwh: meterKwh?.toString() ?? null };
}

function readOpened(row: NonNullable<FiringRow['opened']>, by: (staffId: string) => string) {
  const { at, openedOn, celsius, wattHours, isMetered, costCents, coneFell, staffId } = row;
  const on = dayFromDate(openedOn);
  return { at, on, celsius, wattHours, isMetered, costCents, coneFell, by: by(staffId) };
}

function readLine(row: FiringRow['lines'][number]): LineOfLoad {
  const { job, parts, results, ...line } = row;
  return {
    ...line,
    ...{ jobNumber: job.number, title: job.title, results },
    parts: parts.map(({ partId, part }) => ({
      ...{ partId, number: part.number, make: part.make },
      lying: boxOf(part.shape.outline, job.partMap, line.heightUm),
    })),
  };
}

/** How the lines of a load lie on the shelves; a piece is named by its line and its place in it. */
function layoutOf(kiln: KilnFacts, lines: readonly LineOfLoad[], roomAroundUm: number): Layout {
  const pieces = lines.flatMap(({ id, pieces: many, parts, widthUm, depthUm, heightUm }) => {
    const lying = { widthUm, depthUm, heightUm };
    return piecesToLay(
      id,
      lying,
      many,
      parts.map((part) => part.lying ?? lying),
    );
  });
  return layOnShelves(kiln, pieces, roomAroundUm);
}

function coolOf(
  of: Pick<FiringTold, 'stand' | 'schedule' | 'lit' | 'readings' | 'kiln'>,
  earlierHalving: number | null,
): CoolBy | null {
  const time = firingTime(of.schedule);
  if (of.stand !== 'lit' || !of.lit || !time.ok) return null;
  const { peakC, totalMinutes } = time.value;
  const endsAt = new Date(of.lit.at.getTime() + totalMinutes * 60_000);
  const { readings, kiln } = of;
  return coolBy({ endsAt, peakC, limitC: kiln.openBelowC, readings, earlierHalving });
}

/** How fast the kiln cooled in the latest of its earlier firings in which that was read. */
async function readEarlierHalving(
  from: Prisma.TransactionClient,
  row: { id: string; kilnId: string },
): Promise<number | null> {
  const earlier = await from.firing.findMany({
    where: { kilnId: row.kilnId, id: { not: row.id }, opened: { isNot: null } },
    select: { readings: { select: { at: true, celsius: true } } },
    orderBy: { number: 'desc' },
    take: 8,
  });
  const paces = earlier.map(({ readings }) => (readings.length > 1 ? halvingOf(readings) : null));
  return paces.find((pace) => pace !== null) ?? null;
}
