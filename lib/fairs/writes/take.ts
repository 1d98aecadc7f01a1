import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { findTypedPieces, type KnownPiece } from '@/lib/catalogue/reads/typed-pieces';
import { dayOf } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { isHomePlace } from '@/lib/stock/reads/home-places';
import { readNumbersAt } from '@/lib/stock/reads/numbers';
import { moveStock, type PieceToMove } from '@/lib/stock/writes';
import type { TakeToFairInput } from '../input';
import type { FairRefusal } from '../rules';
import { openFairById, type FairAnswer } from '../writes';

/** How many pieces went along, and the paper that says so. */
export type TakenAnswer = { pieces: number; transferNumber: number };

/**
 * Takes pieces from one of our places to a fair, as one paper. From then on they are for sale there
 * and nowhere else; what is held for somebody stays.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a fair nobody knows
 *   or one that is closed, a place that is not ours, a code nobody knows, an edition without its
 *   number or a number that stands elsewhere, more than are free to take
 */
export async function takeToFair(
  doer: Doer,
  input: TakeToFairInput,
): Promise<FairAnswer<TakenAnswer>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'takeToFair', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<TakenAnswer, FairRefusal>(command, (tx) => take(tx, doer, input));
}

async function take(
  tx: Tx,
  doer: Doer,
  input: TakeToFairInput,
): Promise<Result<TakenAnswer, FairRefusal>> {
  const { fairId, fromId } = input;
  const fair = await openFairById(tx, fairId);
  if (!fair.ok) return fair;
  if (!(await isHomePlace(tx, fromId))) return refuse({ code: 'unknown_place' });
  const known = await findTypedPieces(tx, input.pieces);
  if (!known.ok) return known;
  const pieces = await withNumbers(tx, known.value, fromId);
  if (!pieces.ok) return pieces;

  const { timeZone } = await getGallery(tx);
  const { name, number, placeId: toId } = fair.value;
  const movedOn = dayOf(doer.at, timeZone);
  const transfer = { fromId, toId, pieces: pieces.value, movedOn, note: `To ${name}` };
  const moved = await moveStock(tx, doer, transfer);
  if (!moved.ok) {
    const { skuId, wanted, onHand, held } = moved.refusal;
    const short = known.value.find((piece) => piece.skuId === skuId);
    invariant(short, 'A piece that is short was on the list.');
    const { title, code: sku } = short;
    return refuse({ code: 'not_enough', title, sku, wanted, free: onHand - held, held });
  }
  const count = pieces.value.reduce((sum, piece) => sum + piece.quantity, 0);
  const facts = { number, pieces: count, transfer: moved.value.number };
  const did = 'took pieces to a fair';
  await recordAudit(tx, doer, { did, subject: 'Fair', subjectId: fairId, facts });
  return ok({ pieces: count, transferNumber: moved.value.number });
}

/** Editions move by their numbers: the one that was written, or the only ones there are. */
async function withNumbers(
  tx: Tx,
  known: readonly KnownPiece[],
  placeId: string,
): Promise<Result<PieceToMove[], FairRefusal>> {
  const skuIds = known.filter((piece) => piece.isEdition).map((piece) => piece.skuId);
  const numbersAt = await readNumbersAt(tx, { skuIds, placeId });
  const moved: PieceToMove[] = [];
  for (const { skuId, code: sku, title, isEdition, number, quantity } of known) {
    if (!isEdition) {
      moved.push({ skuId, quantity });
      continue;
    }
    const here = numbersAt.get(skuId) ?? [];
    const chosen = number === null && here.length === quantity ? here : [number];
    for (const editionNumber of chosen) {
      if (editionNumber === null) return refuse({ code: 'which_number', title, sku, here });
      if (!here.includes(editionNumber)) {
        return refuse({ code: 'number_elsewhere', title, sku, number: editionNumber });
      }
      moved.push({ skuId, quantity: 1, editionNumber });
    }
  }
  return ok(moved);
}
