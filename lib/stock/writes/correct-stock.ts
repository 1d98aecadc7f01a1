import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { readEditionNumber } from '@/lib/catalogue/rules/edition';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { CorrectStockInput } from '../input';
import {
  decideCorrection,
  type CorrectionReason,
  type CorrectionRefusal,
} from '../rules/correction';
import { decideNumbered } from '../rules/marks/numbers';
import { bringIntoStock, decideArrivals } from '../writes';

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
 * A piece of an edition that goes is named by its number; one that comes gets the next, or the
 * number that was named, such as an artist's proof.
 *
 * @returns how many are here now; refuses, in this order: not allowed, an unknown piece, what
 *   {@link decideCorrection} refuses, a number that the edition does not have, what
 *   {@link decideNumbered} refuses, more than the edition has left
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
      const { skuId, reason, note } = input;
      const decided = decideCorrection({ reason, pieces: input.pieces }, piece.onHand, piece.held);
      if (!decided.ok) return decided;
      const numbered = await numberNamed(tx, input, { ...piece, placeId, quantity: decided.value });
      if (!numbered.ok) return numbered;

      const unitCostCents = piece.costCents;
      const moved = { skuId, placeId, quantity: decided.value, reason, unitCostCents, note };
      const arrivals = await decideArrivals(tx, [{ ...moved, ...numbered.value }]);
      if (!arrivals.ok) return arrivals;
      await bringIntoStock(tx, doer, arrivals.value);
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
      ...{ code: true, costCents: true, edition: { select: { size: true, artistProofs: true } } },
      levels: { where: { placeId }, select: { onHand: true, held: true }, take: 1 },
    },
  });
  const { onHand, held } = sku?.levels[0] ?? { onHand: 0, held: 0 };
  return sku && { ...sku, onHand, held };
}

type NumberedPiece = NonNullable<Awaited<ReturnType<typeof shelfOf>>> & {
  placeId: string;
  quantity: number;
};

/** The number that was named, when the piece is of an edition and may go or come by it. */
async function numberNamed(
  tx: Tx,
  input: Omit<CorrectStockInput, 'requestKey'>,
  { edition, code: sku, placeId, quantity }: NumberedPiece,
): Promise<Result<{ editionNumber?: number }, CorrectionRefusal>> {
  if (!edition) return ok({});
  const { skuId, reason } = input;
  const typed = input.number ?? '';
  const number = readEditionNumber(typed, edition);
  if (typed !== '' && number === null) return refuse({ code: 'no_such_number' });
  const kept =
    number === null
      ? null
      : await tx.editionPiece.findUnique({
          where: { skuId_number: { skuId, number } },
          select: { placeId: true },
        });
  const named = { sku, number, isHere: kept?.placeId === placeId, hasCome: kept !== null };
  const decided = decideNumbered({ reason, quantity }, named);
  if (!decided.ok) return decided;
  return ok(number === null ? {} : { editionNumber: number });
}
