import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { readSetByCode } from '@/lib/catalogue/reads';
import { isValidGtin } from '@/lib/catalogue/rules';
import type { KeptSet } from '@/lib/catalogue/rules/sets';
import { addDays, dayOf } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { readLastSold, readPiecesForSale } from '@/lib/sales/reads';
import type { SaleRefusal } from '@/lib/sales/rules/refusals';
import { findByCode, findPieces, listPiecesById, type Piece } from '@/lib/stock/reads';
import { formatSize } from '@/lib/units/rules';

/** The most pieces that the counter shows at once. */
const shownMost = 24;
/** How far back it looks for what is often asked for, in days. */
const askedForDays = 90;
const oftenMost = 8;

/** What the counter found for what was typed or scanned. */
export type Found =
  | { kind: 'nothing_typed' }
  /** Exactly this piece, or this number of its edition: it goes onto the slip at once. */
  | { kind: 'exactly'; piece: Piece; number: number | null }
  | { kind: 'set'; set: KeptSet }
  | { kind: 'some'; pieces: Piece[] }
  /** A code from a scanner whose check digit does not fit, or that nobody here has. */
  | { kind: 'misread_code' }
  | { kind: 'unknown_code' }
  | { kind: 'none' };

/** From where it is sold, and when: prices and counts are those of that place and day. */
export type AtPlace = { placeId: string | null; at: Date };

/**
 * Looks for what was typed or scanned: a whole SKU or code is that piece, `SKU#7` the seventh of its
 * edition, a set's code the set; letters find some.
 *
 * @param text at most what a field takes; 13 digits whose check digit is wrong were misread
 */
export async function findAtCounter(actor: Actor, text: string, where: AtPlace): Promise<Found> {
  assertAllowed(actor, 'counter.sell');
  const typed = text.trim();
  if (typed === '') return { kind: 'nothing_typed' };
  const [, code = typed, numberText] = /^(.+?)\s?#\s?(\d{1,6})$/.exec(typed) ?? [];
  const piece = await findByCode(actor, code);
  if (piece) {
    const number = numberText === undefined ? null : Number(numberText);
    const [here = piece] = await asThere([piece], where);
    return { kind: 'exactly', piece: here, number };
  }
  if (/^\d{12,14}$/.test(typed)) {
    return { kind: isValidGtin(typed) ? 'unknown_code' : 'misread_code' };
  }
  const set = await readSetByCode(db(), typed);
  if (set) return { kind: 'set', set };
  const pieces = await findPieces(actor, typed, shownMost);
  return pieces.length > 0
    ? { kind: 'some', pieces: await asThere(pieces, where) }
    : { kind: 'none' };
}

/** Prices and counts of another place than the gallery's counter: those of a fair. */
async function asThere(pieces: readonly Piece[], { placeId, at }: AtPlace): Promise<Piece[]> {
  const gallery = await getGallery();
  if (placeId === null || placeId === gallery.counterId) return [...pieces];
  const skuIds = pieces.map((piece) => piece.id);
  const there = await readPiecesForSale(db(), skuIds, atPlace(gallery, placeId, at));
  return pieces.map((piece) => {
    const { priceCents, onHand, held } = there.get(piece.id) ?? { ...piece, onHand: 0, held: 0 };
    const elsewhere = piece.elsewhere + piece.onHand - onHand;
    return { ...piece, priceCents, onHand, held, elsewhere };
  });
}

function atPlace(gallery: Gallery, placeId: string, at: Date) {
  const { lengthUnit, timeZone } = gallery;
  return { placeId, on: dayOf(at, timeZone), lengthUnit };
}

const askedRow = z.object({ id: z.string() });

/** Pieces that stand where it is sold from and are often asked for, the most often first. */
export async function listOftenAsked(actor: Actor, { placeId, at }: AtPlace): Promise<Piece[]> {
  assertAllowed(actor, 'counter.sell');
  const gallery = await getGallery();
  const sinceOn = addDays(dayOf(at, gallery.timeZone), -askedForDays);
  const rows = await db().$queryRaw`
    SELECT level."skuId" AS id
    FROM "StockLevel" level
    LEFT JOIN "SaleLine" line ON line."skuId" = level."skuId" AND line."saleId" IN (
      SELECT sale.id FROM "Sale" sale WHERE sale."soldOn" >= ${sinceOn}::date)
    WHERE level."placeId" = ${placeId ?? gallery.counterId}::uuid AND level."onHand" > level.held
    GROUP BY level."skuId"
    ORDER BY coalesce(sum(line.quantity), 0) DESC, level."skuId"
    LIMIT ${oftenMost}`;
  const ids = z
    .array(askedRow)
    .parse(rows)
    .map((row) => row.id);
  const pieces = await asThere(await listPiecesById(actor, ids), { placeId, at });
  return pieces.sort((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id));
}

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
