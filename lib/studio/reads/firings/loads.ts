import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { LoadOfStep } from '@/lib/studio/rules/firings/again';

/** The loads in which pieces of one job at one step were, are or are to be. */
export type LoadsOfStep = {
  /** In kilns that were lit and not opened. */
  inFire: number;
  /** In loads that are planned and not lit. */
  planned: number;
  /** Parts that are in such kilns or loads. */
  partIds: ReadonlySet<string>;
  /** Loads that were lit, in the order in which they were. */
  lit: readonly LoadOfStep[];
};

const lineColumns = {
  ...{ firingId: true, jobId: true, position: true, pieces: true },
  parts: { select: { partId: true } },
  results: { where: { outcome: 'fire_again' }, select: { pieces: true } },
  firing: {
    select: {
      lit: { select: { at: true } },
      opened: { select: { at: true } },
    },
  },
} as const satisfies Prisma.FiringLineSelect;

type LineRow = Prisma.FiringLineGetPayload<{ select: typeof lineColumns }>;

/** The loads of these jobs, for asking by job and step. */
export async function readLoadsOfSteps(
  from: Prisma.TransactionClient,
  jobIds: readonly string[],
  exceptFiringId?: string,
): Promise<{ of: (jobId: string, position: number) => LoadsOfStep }> {
  const lines = await from.firingLine.findMany({
    where: {
      jobId: { in: [...jobIds] },
      firing: { calledOffAt: null },
      ...(exceptFiringId === undefined ? {} : { firingId: { not: exceptFiringId } }),
    },
    select: lineColumns,
  });
  return {
    of: (jobId, position) =>
      loadsOf(lines.filter((line) => line.jobId === jobId && line.position === position)),
  };
}

function loadsOf(lines: readonly LineRow[]): LoadsOfStep {
  const open = lines.filter(({ firing }) => !firing.opened);
  const sum = (some: readonly LineRow[]): number =>
    some.reduce((pieces, line) => pieces + line.pieces, 0);
  const lit = lines
    .flatMap((line) => (line.firing.lit ? [{ line, at: line.firing.lit.at.getTime() }] : []))
    .toSorted((one, other) => one.at - other.at)
    .map(({ line }) => ({
      pieces: line.pieces,
      fireAgain: line.results.reduce((pieces, result) => pieces + result.pieces, 0),
    }));
  return {
    inFire: sum(open.filter(({ firing }) => firing.lit)),
    planned: sum(open.filter(({ firing }) => !firing.lit)),
    partIds: new Set(open.flatMap(({ parts }) => parts.map(({ partId }) => partId))),
    lit,
  };
}
