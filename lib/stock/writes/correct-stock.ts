import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { CorrectStockInput } from '../input';
import {
  decideCorrection,
  type CorrectionReason,
  type CorrectionRefusal,
} from '../rules/correction';
import { bringIntoStock } from '../writes';

const didWords: Readonly<Record<CorrectionReason, string>> = {
  made: 'brought pieces from the studio',
  broken: 'wrote off what broke',
  missing: 'wrote off what is missing',
  counted: 'counted again',
};

/**
 * Writes down that pieces came from the studio, broke, are missing, or how many were counted, at
 * the counter's place.
 *
 * @returns how many are here now; refuses, in this order: not allowed, an unknown piece, and what
 *   {@link decideCorrection} refuses
 */
export async function correctStock(
  doer: Doer,
  { requestKey, ...input }: CorrectStockInput,
): Promise<Result<{ code: string; onHand: number }, CorrectionRefusal>> {
  const allowed = allow(doer.actor, 'stock.load');
  if (!allowed.ok) return allowed;
  const command = { key: requestKey, name: 'correctStock', staffId: doer.actor.id, at: doer.at };
  return onceOnly<{ code: string; onHand: number }, CorrectionRefusal>(
    { ...command, input },
    async (tx) => {
      const { counterId: placeId } = await getGallery(tx);
      const piece = await shelfOf(tx, input.skuId, placeId);
      if (!piece) return refuse({ code: 'unknown_piece' });
      const decided = decideCorrection(
        { reason: input.reason, pieces: input.pieces },
        piece.onHand,
      );
      if (!decided.ok) return decided;

      const { skuId, reason, note } = input;
      const unitCostCents = piece.costCents;
      const moved = { skuId, placeId, quantity: decided.value, reason, unitCostCents, note };
      await bringIntoStock(tx, doer, [moved]);
      const onHand = piece.onHand + decided.value;
      const facts = { code: piece.code, quantity: decided.value, onHand, note };
      const did = didWords[reason];
      await recordAudit(tx, doer, { did, subject: 'Sku', subjectId: skuId, facts });
      return ok({ code: piece.code, onHand });
    },
  );
}

async function shelfOf(tx: Tx, skuId: string, placeId: string) {
  const sku = await tx.sku.findUnique({
    where: { id: skuId },
    select: {
      ...{ code: true, costCents: true },
      levels: { where: { placeId }, select: { onHand: true }, take: 1 },
    },
  });
  return sku && { ...sku, onHand: sku.levels[0]?.onHand ?? 0 };
}
