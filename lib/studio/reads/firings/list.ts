import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { outcomes, type Outcome } from '@/lib/studio/rules/firings/opening';
import type { FiringStand } from '@/lib/studio/rules/firings/planning';
import { firingKindOf, type FiringKind } from '@/lib/studio/rules/firings/schedule';
import { loadToLight } from './lighting';
import { standOf, type FiringTold } from './firing';
import type { LoadToLight } from '@/lib/studio/rules/firings/lighting';

/** How many firings a page of the log shows. */
export const firingsOnPage = 40;

/** A firing as a row of the log. */
export type FiringInLog = {
  id: string;
  number: number;
  kiln: string;
  cone: string;
  kind: FiringKind;
  stand: FiringStand;
  isPlanned: boolean;
  /** The day on which it was lit, or else is to be. */
  on: Day;
  pieces: number;
  /** What its pieces take of the whole room, in whole percent. */
  volumePercent: number;
  came: Readonly<Record<Outcome, number>>;
  costCents: bigint | null;
};

const rowColumns = {
  ...{ id: true, number: true, cone: true, peg: true, isPlanned: true, plannedOn: true },
  calledOffAt: true,
  kiln: {
    select: {
      ...{ name: true, insideHeightUm: true, shelfWidthUm: true, shelfDepthUm: true },
    },
  },
  lines: {
    select: {
      ...{ pieces: true, widthUm: true, depthUm: true, heightUm: true },
      results: { select: { outcome: true, pieces: true } },
    },
  },
  lit: { select: { litOn: true } },
  opened: { select: { costCents: true } },
} as const satisfies Prisma.FiringSelect;

type Row = Prisma.FiringGetPayload<{ select: typeof rowColumns }>;

/** Which part of the log is asked for. */
export type LogAsked = { kilnId?: string | undefined; before?: number | undefined };

/**
 * The log of firings, the last first.
 *
 * @param asked `before` a number, for the next page; one more than fits tells that there is one
 */
export async function listFirings(actor: Actor, asked: LogAsked = {}): Promise<FiringInLog[]> {
  assertAllowed(actor, 'studio.see');
  const { kilnId, before } = asked;
  const rows = await db().firing.findMany({
    where: {
      ...(kilnId === undefined ? {} : { kilnId }),
      ...(before === undefined ? {} : { number: { lt: before } }),
    },
    select: rowColumns,
    orderBy: { number: 'desc' },
    take: firingsOnPage + 1,
  });
  return rows.map(inLog);
}

function inLog(row: Row): FiringInLog {
  const { kiln, lines } = row;
  const room = kiln.insideHeightUm * kiln.shelfWidthUm * kiln.shelfDepthUm;
  const taken = lines.reduce(
    (sum, line) => sum + line.pieces * line.widthUm * line.depthUm * line.heightUm,
    0,
  );
  const results = lines.flatMap((line) => line.results);
  const came = Object.fromEntries(
    outcomes.map((outcome) => [
      outcome,
      results.reduce((sum, each) => sum + (each.outcome === outcome ? each.pieces : 0), 0),
    ]),
  ) as Record<Outcome, number>;
  return {
    ...{ id: row.id, number: row.number, kiln: kiln.name, cone: row.cone, came },
    ...{ kind: firingKindOf(row.peg), stand: standOf(row), isPlanned: row.isPlanned },
    on: dayFromDate(row.lit?.litOn ?? row.plannedOn),
    pieces: lines.reduce((sum, line) => sum + line.pieces, 0),
    volumePercent: Math.floor((taken * 100) / room),
    costCents: row.opened?.costCents ?? null,
  };
}

/** What is asked before a planned load is lit: whether its pieces are there, and dry. */
export async function findToLight(actor: Actor, firing: FiringTold): Promise<LoadToLight> {
  assertAllowed(actor, 'studio.see');
  const { id, number, stand, cone, kind, kilnId, kiln, lit, opened } = firing;
  const by = opened?.by ?? lit?.by ?? '';
  return loadToLight(db(), { id, number, stand, cone, kind, kilnId, kiln: kiln.name, by });
}
