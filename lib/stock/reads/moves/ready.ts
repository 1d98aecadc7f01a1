import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { isValidGtin } from '@/lib/catalogue/rules';
import { db } from '@/lib/platform/db/client';
import { findByCode, listPiecesById, type Piece } from '../../reads';
import {
  decideMove,
  layReady,
  moveRefusalMessage,
  type MovePlace,
  type PieceAtPlace,
  type ReadyPiece,
} from '../../rules/moves/move';
import { listStanding, type PieceStanding } from './places';
import { readPiecesAt } from './shelf';

/** The most pieces that a search shows. */
const foundMost = 24;

/** A line that lies ready, and why it cannot go; null when it can. */
export type ReadyShown = ReadyPiece & { piece: Piece | null; why: string | null };

/**
 * What lies ready, with each piece and why it cannot go from here to there.
 *
 * @param wish places by their ids; empty where none is chosen yet
 */
export async function showReady(
  actor: Actor,
  wish: { fromId: string; toId: string; ready: readonly ReadyPiece[] },
): Promise<ReadyShown[]> {
  assertAllowed(actor, 'stock.see');
  const { ready } = wish;
  const from = await placeOf(wish.fromId);
  const to = (await placeOf(wish.toId)) ?? somewhere;
  const codes = ready.map((line) => line.sku);
  const shelves = from
    ? await readPiecesAt(db(), { codes, placeId: from.id })
    : new Map<string, PieceAtPlace>();
  const skuIds = [...shelves.values()].map((piece) => piece.skuId);
  const pieces = new Map((await listPiecesById(actor, skuIds)).map((piece) => [piece.code, piece]));
  return ready.map((line) => {
    const decided = from ? decideMove({ from, to, ready: [line] }, shelves) : null;
    const why = decided && !decided.ok ? moveRefusalMessage(decided.refusal) : null;
    return { ...line, piece: pieces.get(line.sku) ?? null, why };
  });
}

/** Where nothing is chosen yet, only the place that pieces leave can say no. */
const somewhere: MovePlace = { id: '', name: '', kind: 'storeroom', isClosed: false };

async function placeOf(id: string): Promise<MovePlace | null> {
  if (id === '') return null;
  const place = await db().place.findUnique({
    where: { id },
    select: { id: true, name: true, kind: true, closedAt: true },
  });
  return place && { ...place, isClosed: place.closedAt !== null };
}

/** What came of a scan: laid ready, told why not, or pieces that the letters found. */
export type Looked =
  | { kind: 'nothing_typed' }
  | { kind: 'laid'; ready: ReadyPiece[] }
  | { kind: 'told'; sentence: string }
  | { kind: 'found'; pieces: PieceStanding[] };

/**
 * Lays ready what was scanned at the place it leaves, or finds it by letters there. A numbered piece
 * is scanned with its number, `CODE 7`; where only one is left, that one is meant.
 *
 * @param wish `find` as it was typed or scanned
 */
export async function lookAtPlace(
  actor: Actor,
  wish: { fromId: string; find: string; ready: readonly ReadyPiece[] },
): Promise<Looked> {
  assertAllowed(actor, 'stock.see');
  const typed = wish.find.trim();
  if (typed === '') return { kind: 'nothing_typed' };
  const from = await placeOf(wish.fromId);
  if (!from) return { kind: 'told', sentence: 'First say from which place they go.' };
  const scanned = await findScanned(actor, typed);
  if (scanned) return layScanned(from, wish.ready, scanned);
  if (/^\d{12,14}$/.test(typed)) {
    const sentence = isValidGtin(typed)
      ? `No piece of ours has the code ${typed}.`
      : `${typed} was misread: its last digit does not fit the others. Scan it once more.`;
    return { kind: 'told', sentence };
  }
  const letters = { letters: typed, page: 1, limit: foundMost };
  const { pieces } = await listStanding(actor, from.id, letters);
  if (pieces.length > 0) return { kind: 'found', pieces };
  return { kind: 'told', sentence: `Nothing at “${from.name}” is called “${typed}”.` };
}

type Scanned = { sku: string; number: number | null };

async function findScanned(actor: Actor, typed: string): Promise<Scanned | null> {
  const whole = await findByCode(actor, typed);
  if (whole) return { sku: whole.code, number: null };
  const [, code, number] = /^(\S+)[\s~#]+(\d{1,4})$/.exec(typed) ?? [];
  const piece = code === undefined ? null : await findByCode(actor, code);
  return piece && { sku: piece.code, number: Number(number) };
}

async function layScanned(
  from: MovePlace,
  ready: readonly ReadyPiece[],
  scanned: Scanned,
): Promise<Looked> {
  const shelves = await readPiecesAt(db(), { codes: [scanned.sku], placeId: from.id });
  const piece = shelves.get(scanned.sku);
  const number = scanned.number ?? (piece ? onlyNumberLeft(piece, ready) : null);
  const line = { sku: scanned.sku, quantity: 1, number };
  const laid = layReady(ready, line);
  const inAll = laid.find((each) => each.sku === line.sku && each.number === number);
  const wish = { from, to: somewhere, ready: [inAll ?? line] };
  const decided = decideMove(wish, shelves);
  if (!decided.ok) return { kind: 'told', sentence: moveRefusalMessage(decided.refusal) };
  return { kind: 'laid', ready: laid };
}

function onlyNumberLeft(piece: PieceAtPlace, ready: readonly ReadyPiece[]): number | null {
  if (!piece.isNumbered) return null;
  const taken = ready.filter((line) => line.sku === piece.sku).map((line) => line.number);
  const left = piece.numbers.filter((number) => !taken.includes(number));
  return left.length === 1 ? (left[0] ?? null) : null;
}
