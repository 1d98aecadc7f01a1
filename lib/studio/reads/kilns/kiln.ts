import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addDays, dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import {
  elementAge,
  turnsThisWeek,
  type ElementAge,
  type FiringCounted,
  type KilnFacts,
  type KilnPart,
  type WeekOfTurns,
} from '@/lib/studio/rules/kilns/keeping';
import { namesOf } from '../firings/names';
import { kilnColumns, readKilnFacts } from './facts';

/** A kiln in the list, with its age and its week. */
export type KilnInList = KilnFacts & {
  id: string;
  retiredOn: Day | null;
  age: ElementAge;
  week: WeekOfTurns;
  /** The firing that burns or cools in it. */
  burning: { number: number; cone: string; litAt: Date } | null;
  /** Days on which it stands still, from today on, the nearest first. */
  closed: readonly ClosedDays[];
};

/** Days on which a kiln, or the whole studio, stands still. */
export type ClosedDays = {
  id: string;
  fromOn: Day;
  toOn: Day;
  why: string;
  isWholeStudio: boolean;
};

const listColumns = {
  ...kilnColumns,
  care: { where: { part: 'elements' }, select: { on: true } },
  firings: {
    where: { lit: { isNot: null } },
    select: {
      ...{ number: true, cone: true, isPlanned: true },
      lit: { select: { litOn: true, at: true } },
      opened: { select: { firingId: true } },
    },
  },
} as const satisfies Prisma.KilnSelect;

type ListRow = Prisma.KilnGetPayload<{ select: typeof listColumns }>;

/** The kilns of the studio by their names; those that are no longer used come last. */
export async function listKilns(actor: Actor, todayOn: Day): Promise<KilnInList[]> {
  assertAllowed(actor, 'studio.see');
  const [rows, closed] = await Promise.all([
    db().kiln.findMany({ select: listColumns, orderBy: { name: 'asc' } }),
    readClosed(todayOn),
  ]);
  const kilns = rows.map((row) => inList(row, closed.of(row.id), todayOn));
  return kilns.toSorted((one, other) => Number(!!one.retiredOn) - Number(!!other.retiredOn));
}

function inList(row: ListRow, closed: ClosedDays[], todayOn: Day): KilnInList {
  const { care, firings, ...kiln } = row;
  const lit = firings.flatMap((firing) => (firing.lit ? [{ ...firing, lit: firing.lit }] : []));
  const counted: FiringCounted[] = lit.map((firing) => ({
    litOn: dayFromDate(firing.lit.litOn),
    isPlanned: firing.isPlanned,
  }));
  const burns = lit.find(({ opened }) => !opened);
  const facts = readKilnFacts(kiln);
  const changedOn = care.map(({ on }) => dayFromDate(on));
  return {
    ...facts,
    age: elementAge(counted, changedOn, facts.elementFirings),
    week: turnsThisWeek(counted, facts.turnsAWeek, todayOn),
    burning: burns ? { number: burns.number, cone: burns.cone, litAt: burns.lit.at } : null,
    closed,
  };
}

async function readClosed(todayOn: Day): Promise<{ of: (kilnId: string) => ClosedDays[] }> {
  const rows = await db().studioClosed.findMany({
    where: { benchId: null, toOn: { gte: dateFromDay(addDays(todayOn, 0)) } },
    orderBy: [{ fromOn: 'asc' }, { id: 'asc' }],
    take: 200,
  });
  return {
    of: (kilnId) =>
      rows
        .filter((row) => row.kilnId === null || row.kilnId === kilnId)
        .map((row) => ({
          ...{ id: row.id, why: row.why, isWholeStudio: row.kilnId === null },
          ...{ fromOn: dayFromDate(row.fromOn), toOn: dayFromDate(row.toOn) },
        })),
  };
}

/** What was changed or mended in a kiln, and by whom. */
export type CareTold = { id: string; part: KilnPart; on: Day; note: string; by: string };

/** One kiln with what was done to it, the last first. */
export type KilnTold = KilnInList & { care: readonly CareTold[] };

/** One kiln by its id; null when there is none. */
export async function findKiln(actor: Actor, id: string, todayOn: Day): Promise<KilnTold | null> {
  assertAllowed(actor, 'studio.see');
  const [row, closed, care] = await Promise.all([
    db().kiln.findUnique({ where: { id }, select: listColumns }),
    readClosed(todayOn),
    db().kilnCare.findMany({
      where: { kilnId: id },
      orderBy: [{ on: 'desc' }, { at: 'desc' }],
      take: 200,
    }),
  ]);
  if (!row) return null;
  const names = await namesOf(
    db(),
    care.map(({ staffId }) => staffId),
  );
  return {
    ...inList(row, closed.of(id), todayOn),
    care: care.map(({ staffId, on, at: _, kilnId: __, ...rest }) => ({
      ...{ ...rest, on: dayFromDate(on), by: names.get(staffId) ?? 'somebody' },
    })),
  };
}
