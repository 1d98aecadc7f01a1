import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dayOf, type Day } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { MovePiecesInput } from '../input/places';
import { readPiecesAt } from '../reads/moves/shelf';
import {
  decideMove,
  type MovePlace,
  type MoveRefusal,
  type PieceAtPlace,
  type ReadyPiece,
} from '../rules/moves/move';
import { moveStock } from '../writes';

/** A move that was written down, by the number of its paper. */
export type MovedAnswer = { transferId: string; number: number; pieces: number };

/**
 * Moves what lies ready from one place to another, as one paper.
 *
 * @returns the paper's number; refuses, in this order: not allowed, a key used for something else,
 *   and what {@link decideMove} refuses; then nothing moves
 */
export async function movePieces(
  doer: Doer,
  input: MovePiecesInput,
): Promise<Result<MovedAnswer, MoveRefusal>> {
  const allowed = allow(doer.actor, 'stock.move');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'movePieces', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<MovedAnswer, MoveRefusal>(command, async (tx) => {
    const { timeZone } = await getGallery(tx);
    return recordMove(tx, doer, { ...said, movedOn: dayOf(doer.at, timeZone) });
  });
}

/** Pieces that lie ready, from where and to where. */
export type MoveToRecord = {
  fromId: string;
  toId: string;
  ready: readonly ReadyPiece[];
  note: string;
  movedOn: Day;
};

/**
 * The step of {@link movePieces}: joins the caller's transaction; the caller has asked whether the
 * doer may. Another gallery's consignment note stands on such a move.
 *
 * @returns refuses what {@link decideMove} refuses, and writes nothing then
 */
export async function recordMove(
  tx: Tx,
  doer: Doer,
  move: MoveToRecord,
): Promise<Result<MovedAnswer, MoveRefusal>> {
  const { fromId, toId, ready, note, movedOn } = move;
  const [from, to] = [await findPlace(tx, fromId), await findPlace(tx, toId)];
  const codes = ready.map((piece) => piece.sku);
  const shelves = from
    ? await readPiecesAt(tx, { codes, placeId: from.id })
    : new Map<string, PieceAtPlace>();
  const decided = decideMove({ from, to, ready }, shelves);
  if (!decided.ok) return decided;
  invariant(from && to, 'A move that was decided goes from a place to another.');

  const moved = await moveStock(tx, doer, { fromId, toId, pieces: decided.value, movedOn, note });
  invariant(moved.ok, 'What was decided to move is there and free.');
  const pieces = decided.value.reduce((sum, piece) => sum + piece.quantity, 0);
  const { transferId, number } = moved.value;
  const facts = { number, pieces, from: from.name, to: to.name };
  const did = 'moved pieces';
  await recordAudit(tx, doer, { did, subject: 'StockTransfer', subjectId: transferId, facts });
  return ok({ transferId, number, pieces });
}

async function findPlace(tx: Tx, id: string): Promise<MovePlace | null> {
  if (id === '') return null;
  const place = await tx.place.findUnique({
    where: { id },
    select: { id: true, name: true, kind: true, closedAt: true },
  });
  return place && { ...place, isClosed: place.closedAt !== null };
}
