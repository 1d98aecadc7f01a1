import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { editionRefusalMessage } from '@/lib/stock/rules/marks/numbers';
import { bringIntoStock, decideArrivals } from '@/lib/stock/writes';
import type { MoveRefusal, UndoRefusal } from '@/lib/studio/rules';
import { readUnitCost } from '@/lib/studio/reads/costs/unit-cost';
import type { JobToMove } from '@/lib/studio/reads/moving';
import type { Moved } from './keep-move';

/**
 * Finished pieces of a job for stock come into stock at what one costs: in the studio's own place
 * where it has one, else on the gallery's floor. Pieces of a commission or of a special order do
 * not: those are handed over by their own papers.
 *
 * @returns refuses what an edition has no number left for
 */
export async function bringFinishedIn(
  tx: Tx,
  doer: Doer,
  job: Pick<JobToMove, 'id' | 'commissionId' | 'skuId'>,
  moved: Moved,
): Promise<Result<true, MoveRefusal>> {
  const { skuId } = job;
  if (skuId === null || job.commissionId !== null) return ok(true);
  if ((await tx.specialOrder.count({ where: { jobId: job.id } })) > 0) return ok(true);
  const placeId = await placeForFinished(tx);
  const unitCostCents = await costOfOne(tx, { jobId: job.id, skuId });
  const { pieces } = moved;
  const arrival = { skuId, placeId, quantity: pieces, reason: 'made' as const, unitCostCents };
  const arrivals = await decideArrivals(tx, [arrival]);
  if (!arrivals.ok) {
    return refuse({ code: 'edition_is_full', words: editionRefusalMessage(arrivals.refusal) });
  }
  await bringIntoStock(tx, doer, arrivals.value);
  const moveId = BigInt(moved.undoId);
  await tx.jobIntoStock.create({
    data: { ...{ jobId: job.id, moveId, skuId, placeId, pieces, unitCostCents }, at: doer.at },
    select: { id: true },
  });
  return ok(true);
}

/**
 * What a move brought into stock goes out again when the move is taken back.
 *
 * @returns refuses pieces that were sold or moved meanwhile, and pieces that have a number of an
 *   edition: that number stays given
 */
export async function takeFinishedOut(
  tx: Tx,
  doer: Doer,
  of: { moveId: bigint; backId: string },
): Promise<Result<true, UndoRefusal>> {
  const came = await tx.jobIntoStock.findMany({
    where: { moveId: of.moveId },
    select: {
      ...{ jobId: true, skuId: true, placeId: true, pieces: true, unitCostCents: true },
      sku: {
        select: { design: { select: { title: true } }, edition: { select: { skuId: true } } },
      },
    },
  });
  for (const { sku, ...back } of came) {
    const { title } = sku.design;
    if (sku.edition) return refuse({ code: 'numbered_already', title });
    const { skuId, placeId, pieces, unitCostCents } = back;
    const level = await tx.stockLevel.findUnique({
      where: { skuId_placeId: { skuId, placeId } },
      select: { onHand: true, held: true },
    });
    if (!level || level.onHand - level.held < pieces) {
      return refuse({ code: 'sold_meanwhile', title });
    }
    const note = 'taken back to the studio';
    const out = { skuId, placeId, quantity: -pieces, reason: 'made' as const, unitCostCents, note };
    await bringIntoStock(tx, doer, [out]);
    await tx.jobIntoStock.create({
      data: { ...back, pieces: -pieces, moveId: BigInt(of.backId), at: doer.at },
      select: { id: true },
    });
  }
  return ok(true);
}

async function placeForFinished(tx: Tx): Promise<string> {
  const studio = await tx.place.findFirst({
    where: { kind: 'studio', closedAt: null },
    select: { id: true },
    orderBy: { name: 'asc' },
  });
  return studio?.id ?? (await getGallery(tx)).counterId;
}

/** What one costs by the job's own way, clay and size; else what the stock list says of it. */
async function costOfOne(tx: Tx, of: { jobId: string; skuId: string }): Promise<bigint | null> {
  const reckoned = await readUnitCost(tx, { jobId: of.jobId });
  if (reckoned !== null) return reckoned;
  const sku = await tx.sku.findUnique({
    where: { id: of.skuId },
    select: { costCents: true },
  });
  return sku?.costCents ?? null;
}
