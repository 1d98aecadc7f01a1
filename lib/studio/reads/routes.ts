import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { pegOf, techniques, type RouteStep, type Technique } from '../rules/routes';

/** The columns of a step of a route or of a job, for {@link readStep}. */
export const stepColumns = {
  ...{ name: true, peg: true, kind: true, benchId: true, cone: true },
  ...{ shortestDays: true, likelyDays: true, longestDays: true },
  ...{ isTogether: true, lossPercent: true, minutesEach: true, caution: true },
} as const;

type StepRow = Omit<RouteStep, 'peg' | 'lossPercent' | 'minutesEach'> & {
  peg: string;
  lossPercent: { toString: () => string };
  minutesEach: { toString: () => string };
};

/** A step as the rules know it, from its row. */
export function readStep(row: StepRow): RouteStep {
  const { name, kind, benchId, cone, shortestDays, likelyDays, longestDays } = row;
  return {
    ...{ name, peg: pegOf(row.peg), kind, benchId, cone, shortestDays, likelyDays, longestDays },
    isTogether: row.isTogether,
    lossPercent: row.lossPercent.toString(),
    minutesEach: row.minutesEach.toString(),
    caution: row.caution,
  };
}

/** A route of the studio. */
export type Route = {
  id: string;
  name: string;
  technique: Technique;
  isUsual: boolean;
  hasEnded: boolean;
  steps: RouteStep[];
};

/** The columns of a route, for {@link readRoute}. */
export const routeColumns = {
  ...{ id: true, name: true, technique: true, isUsual: true, endedAt: true },
  steps: { select: stepColumns, orderBy: { position: 'asc' } },
} as const satisfies Prisma.RouteSelect;

/** A route from its row. */
export function readRoute(row: Prisma.RouteGetPayload<{ select: typeof routeColumns }>): Route {
  const { id, name, technique, isUsual } = row;
  return {
    id,
    name,
    technique,
    isUsual,
    hasEnded: row.endedAt !== null,
    steps: row.steps.map(readStep),
  };
}

/** One route that is in use; null when there is none of that id. */
export async function findRouteInUse(
  from: Prisma.TransactionClient,
  where: { id: string } | { technique: Technique },
): Promise<Route | null> {
  const usual = 'id' in where ? where : { ...where, isUsual: true };
  const row = await from.route.findFirst({
    where: { ...usual, endedAt: null },
    select: routeColumns,
  });
  return row && readRoute(row);
}

/** The steps that each technique usually goes through, by technique; every one has them. */
export async function readUsualRoutes(
  from: Prisma.TransactionClient,
): Promise<Record<Technique, RouteStep[]>> {
  const rows = await from.route.findMany({
    where: { isUsual: true, endedAt: null },
    select: routeColumns,
  });
  const steps = new Map(rows.map((row) => [row.technique, row.steps.map(readStep)]));
  const [slab_relief, slip_cast, press_moulded, thrown] = techniques.map(
    (technique) => steps.get(technique) ?? [],
  );
  return {
    ...{ slab_relief: slab_relief ?? [], slip_cast: slip_cast ?? [] },
    ...{ press_moulded: press_moulded ?? [], thrown: thrown ?? [] },
  };
}
