import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { isValidGtin } from '@/lib/catalogue/rules';
import { addDays, dayOf } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { formatSize } from '@/lib/units/rules';
import { findByCode, findPieces, listPiecesById, type Piece } from '@/lib/stock/reads';
import { readLastSold } from '../reads';
import type { SaleRefusal } from '../rules/refusals';

/** The most pieces that the counter shows at once. */
const shownMost = 24;
/** How far back it looks for what is often asked for, in days. */
const askedForDays = 90;

/** What the counter found for what was typed or scanned. */
export type Found =
  | { kind: 'nothing_typed' }
  /** Exactly this piece: it goes onto the slip at once. */
  | { kind: 'exactly'; piece: Piece }
  | { kind: 'some'; pieces: Piece[] }
  /** A code from a scanner whose check digit does not fit, or that nobody here has. */
  | { kind: 'misread_code' }
  | { kind: 'unknown_code' }
  | { kind: 'none' };

/**
 * Looks for what was typed or scanned: a whole SKU or code is that piece, letters find some.
 *
 * @param text at most what a field takes; 13 digits whose check digit is wrong were misread
 */
export async function findAtCounter(actor: Actor, text: string): Promise<Found> {
  assertAllowed(actor, 'counter.sell');
  const typed = text.trim();
  if (typed === '') return { kind: 'nothing_typed' };
  const piece = await findByCode(actor, typed);
  if (piece) return { kind: 'exactly', piece };
  if (/^\d{12,14}$/.test(typed)) {
    return { kind: isValidGtin(typed) ? 'unknown_code' : 'misread_code' };
  }
  const pieces = await findPieces(actor, typed, shownMost);
  return pieces.length > 0 ? { kind: 'some', pieces } : { kind: 'none' };
}

const askedRow = z.object({ id: z.string() });

/** Pieces that stand at the counter and are often asked for, the most often first. */
export async function listOftenAsked(actor: Actor, at: Date): Promise<Piece[]> {
  assertAllowed(actor, 'counter.sell');
  const gallery = await getGallery();
  const sinceOn = addDays(dayOf(at, gallery.timeZone), -askedForDays);
  const rows = await db().$queryRaw`
    SELECT level."skuId" AS id
    FROM "StockLevel" level
    LEFT JOIN "SaleLine" line ON line."skuId" = level."skuId" AND line."saleId" IN (
      SELECT sale.id FROM "Sale" sale WHERE sale."soldOn" >= ${sinceOn}::date)
    WHERE level."placeId" = ${gallery.counterId}::uuid AND level."onHand" > 0
    GROUP BY level."skuId"
    ORDER BY coalesce(sum(line.quantity), 0) DESC, level."skuId"
    LIMIT ${oftenMost}`;
  const ids = z
    .array(askedRow)
    .parse(rows)
    .map((row) => row.id);
  const pieces = await listPiecesById(actor, ids);
  return pieces.sort((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id));
}

const oftenMost = 8;

/** Why there are not so many of a piece here, with when the last one went: for its sentence. */
export async function explainShortage(
  actor: Actor,
  piece: Piece,
  wanted: number,
  askedAt: Date,
): Promise<SaleRefusal> {
  assertAllowed(actor, 'counter.sell');
  const { title, code: sku, onHand } = piece;
  const [gallery, last] = await Promise.all([getGallery(), readLastSold(db(), [piece.id])]);
  const size = formatSize(piece, gallery.lengthUnit);
  const facts = { title, sku, size, wanted, onHand, askedAt };
  return { code: 'not_enough_pieces', ...facts, last: last.get(piece.id) ?? null };
}
