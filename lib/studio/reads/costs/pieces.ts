import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { PieceKind } from '@/lib/catalogue/rules';
import type { PieceToCost } from '@/lib/studio/rules/costs/facts';
import { firstKnown } from '@/lib/studio/rules/firings/lying';
import type { RouteStep, Technique } from '@/lib/studio/rules/routes';
import { readStep, readUsualRoutes, stepColumns } from '../routes';

const skuColumns = {
  ...{ kind: true, widthUm: true, heightUm: true, depthUm: true, weightG: true },
} as const satisfies Prisma.SkuSelect;

const jobColumns = {
  ...{ technique: true, bodyId: true },
  ...{ widthUm: true, heightUm: true, depthUm: true },
  steps: { select: stepColumns, orderBy: { position: 'asc' } },
} as const satisfies Prisma.JobSelect;

/** The columns of a SKU that a cost is reckoned from, its last job among them. */
export const costColumns = {
  ...skuColumns,
  design: { select: { moulds: { where: { kind: 'working' }, select: { id: true }, take: 1 } } },
  jobs: { select: jobColumns, orderBy: { number: 'desc' }, take: 1 },
} as const satisfies Prisma.SkuSelect;

type SkuRow = Prisma.SkuGetPayload<{ select: typeof costColumns }>;

/** How a kind of piece is made here while no job of it says. */
function usualTechnique(kind: PieceKind, hasMould: boolean): Technique {
  if (hasMould || kind === 'relief_tile') return 'slip_cast';
  return kind === 'plaque' || kind === 'wall_panel' ? 'slab_relief' : 'thrown';
}

/** The usual routes, for {@link pieceOfSku}. */
export type Routes = Record<Technique, RouteStep[]>;

/**
 * A SKU as it is reckoned: by the steps and the clay of its last job, or else as such a piece is
 * usually made.
 */
export function pieceOfSku(row: SkuRow, routes: Routes): PieceToCost {
  const { kind, widthUm, heightUm, depthUm, weightG, design } = row;
  const [job] = row.jobs;
  const technique = job?.technique ?? usualTechnique(kind, design.moulds.length > 0);
  return {
    ...{ kind, technique, widthUm, heightUm, weightG },
    depthUm: depthUm ?? job?.depthUm ?? null,
    steps: job && job.steps.length > 0 ? job.steps.map(readStep) : routes[technique],
    bodyId: job?.bodyId ?? null,
  };
}

/** One SKU as it is reckoned; null when there is none. */
export async function readPieceOfSku(
  from: Prisma.TransactionClient,
  skuId: string,
): Promise<PieceToCost | null> {
  const row = await from.sku.findUnique({ where: { id: skuId }, select: costColumns });
  return row && pieceOfSku(row, await readUsualRoutes(from));
}

/** One piece of a job as it is reckoned, by the job's own steps, size and clay; null when there is none. */
export async function readPieceOfJob(
  from: Prisma.TransactionClient,
  jobId: string,
): Promise<PieceToCost | null> {
  const row = await from.job.findUnique({
    where: { id: jobId },
    select: { ...jobColumns, sku: { select: skuColumns } },
  });
  if (!row) return null;
  const { technique, bodyId, sku } = row;
  return {
    ...{ technique, bodyId, kind: sku?.kind ?? null },
    widthUm: firstKnown(row.widthUm, sku?.widthUm),
    heightUm: firstKnown(row.heightUm, sku?.heightUm),
    depthUm: firstKnown(row.depthUm, sku?.depthUm),
    weightG: isOfThatSize(row, sku) ? firstKnown(sku?.weightG) : null,
    steps: row.steps.map(readStep),
  };
}

/** A job with a size of its own weighs something else than the piece of the catalogue. */
function isOfThatSize(
  job: { widthUm: number | null; heightUm: number | null },
  sku: { widthUm: number; heightUm: number } | null,
): boolean {
  const own = [job.widthUm, job.heightUm];
  return own.every((side, at) => side === null || side === [sku?.widthUm, sku?.heightUm][at]);
}
