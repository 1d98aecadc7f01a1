import 'server-only';
import { createHash } from 'node:crypto';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayOf } from '@/lib/dates/rules';
import { keepFile, preparePicture } from '@/lib/files/writes';
import type { Cents } from '@/lib/money/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { MarkAsSecondInput } from '../input/second';
import { readFirst, type FirstPiece } from '../reads/first-piece';
import {
  sameFlaw,
  secondCode,
  secondPriceCents,
  type SecondGrade,
  type SecondRefusal,
} from '../rules/marks/second';
import { bringIntoStock } from '../writes';

/** Pieces that turned out to be seconds. */
export type PiecesToMark = {
  skuId: string;
  placeId: string;
  /** At least one; one for a numbered piece. */
  quantity: number;
  grade: SecondGrade;
  /** In words that can be said aloud. */
  flaw: string;
  /** In cents; null for the common share of the first's price. */
  priceCents: Cents | null;
  editionNumber?: number;
  pictureId?: string | null;
};

/** Where the pieces are kept now. */
export type MarkedSecond = { skuId: string; code: string; firstCode: string };

/**
 * Marks pieces at the counter's place as seconds, for good; see {@link markAsSecondStep}.
 *
 * @returns the second's SKU; refuses, in this order: not allowed, what is no picture, then as the
 *   step does
 */
export async function markAsSecond(
  doer: Doer,
  { requestKey, picture, ...input }: MarkAsSecondInput & { picture?: Uint8Array },
): Promise<Result<MarkedSecond, SecondRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const prepared = picture && (await preparePicture(picture));
  if (prepared && !prepared.ok) return prepared;
  const sha256 = picture ? createHash('sha256').update(picture).digest('hex') : null;
  const command = { key: requestKey, name: 'markAsSecond', staffId: doer.actor.id, at: doer.at };
  return onceOnly<MarkedSecond, SecondRefusal>(
    { ...command, input: { ...input, sha256 } },
    async (tx) => {
      const { counterId: placeId } = await getGallery(tx);
      const { editionNumber, ...pieces } = input;
      const pictureId = prepared
        ? (await keepFile(tx, { ...prepared.value, at: doer.at })).id
        : null;
      const numbered = editionNumber === null ? {} : { editionNumber };
      return markAsSecondStep(tx, doer, { ...pieces, ...numbered, placeId, pictureId });
    },
  );
}

/**
 * Takes pieces out of their SKU and brings them into the second's own, in the caller's
 * transaction; whoever calls it has asked whether the doer may. A second with the same flaw joins
 * the SKU that is there; a number of an edition leaves the edition for good.
 *
 * @returns refuses, in this order: an unknown piece, a second already, an edition without its
 *   number, several of a numbered piece, a number that is not here, more than are here and free
 */
export async function markAsSecondStep(
  tx: Tx,
  doer: Doer,
  pieces: PiecesToMark,
): Promise<Result<MarkedSecond, SecondRefusal>> {
  const { timeZone } = await getGallery(tx);
  const on = dateFromDay(dayOf(doer.at, timeZone));
  const first = await readFirst(tx, { skuId: pieces.skuId, placeId: pieces.placeId, on });
  if (!first) return refuse({ code: 'unknown_piece' });
  const refusal = refusalToMark(first, pieces);
  if (refusal) return refuse(refusal);

  const second = await keepSecond(tx, doer, { first, pieces });
  const { placeId, quantity, editionNumber } = pieces;
  const moved = { placeId, reason: 'second', unitCostCents: first.costCents } as const;
  await bringIntoStock(tx, doer, [
    {
      ...{ ...moved, skuId: first.id, quantity: -quantity, note: pieces.flaw },
      ...(editionNumber === undefined ? {} : { editionNumber }),
    },
    { ...moved, skuId: second.id, quantity, note: `from ${first.code}` },
  ]);
  const { grade, flaw } = pieces;
  const facts = { code: second.code, from: first.code, quantity, grade, flaw };
  const did = 'marked pieces as seconds';
  await recordAudit(tx, doer, { did, subject: 'Sku', subjectId: second.id, facts });
  return ok({ skuId: second.id, code: second.code, firstCode: first.code });
}

function refusalToMark(first: FirstPiece, pieces: PiecesToMark): SecondRefusal | null {
  const { quantity, editionNumber } = pieces;
  if (first.grade !== 'first') return { code: 'second_already' };
  if (first.edition) {
    if (editionNumber === undefined) return { code: 'which_number', sku: first.code };
    if (quantity !== 1) return { code: 'one_number_at_a_time' };
    if (!first.numbersHere.includes(editionNumber)) return { code: 'number_not_here' };
  }
  const { onHand, held } = first;
  return quantity > onHand - held ? { code: 'not_enough_here', onHand, held } : null;
}

async function keepSecond(
  tx: Tx,
  doer: Doer,
  { first, pieces }: { first: FirstPiece; pieces: PiecesToMark },
): Promise<{ id: string; code: string }> {
  const { grade, flaw, pictureId = null } = pieces;
  const same = first.seconds.find(
    (each) => each.grade === grade && sameFlaw(each.flaw) === sameFlaw(flaw),
  );
  if (same) {
    if (pictureId) await tx.sku.update({ where: { id: same.id }, data: { pictureId } });
    return same;
  }
  const code = secondCode(first.code, grade, new Set(first.takenCodes));
  const { designId, colourwayId, kind, widthUm, heightUm, depthUm, weightG } = first;
  const { costCents, foodUse, madeInYear, medium } = first;
  return tx.sku.create({
    data: {
      ...{ code, designId, colourwayId, kind, widthUm, heightUm, depthUm, weightG, costCents },
      ...{ madeInYear, medium, grade, flaw, firstSkuId: first.id },
      making: first.making === 'one_off' ? 'one_off' : 'open_stock',
      // A piece with a flaw in its glaze is not the one that was proven.
      foodUse: foodUse === 'proven' ? 'not_proven' : foodUse,
      priceCents: pieces.priceCents ?? secondPriceCents(first.priceCents, grade),
      pictureId: pictureId ?? first.pictureId,
      createdAt: doer.at,
    },
    select: { id: true, code: true },
  });
}
