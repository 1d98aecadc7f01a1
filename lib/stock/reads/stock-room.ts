import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { isPieceKind } from '@/lib/catalogue/rules';
import { db } from '@/lib/platform/db/client';
import { findPieces, piecesIn, type Piece } from '../reads';

/** How many pieces hang on one page of the stock room. */
export const piecesAPage = 48;
/** How many pieces a search shows at most. */
const foundMost = 50;

/** A page of the stock room. */
export type StockRoom = {
  pieces: Piece[];
  page: number;
  /** Pages in all; at least one. */
  pages: number;
  /** SKUs in all, of this kind. */
  total: number;
  /** How many SKUs there are of each kind, for the row of choices. */
  kinds: readonly { kind: string; count: number }[];
};

/**
 * The stock room: all pieces by title, or those of one kind, or those that a few letters find.
 *
 * @param wish letters, kind (empty: all) and page, from 1; a page past the end is the last one
 */
export async function listStock(
  actor: Actor,
  wish: { letters: string; kind: string; page: number },
): Promise<StockRoom> {
  assertAllowed(actor, 'stock.see');
  const kinds = await countKinds();
  const everything = kinds.reduce((sum, each) => sum + each.count, 0);
  const kind = isPieceKind(wish.kind) ? wish.kind : null;
  if (wish.letters.trim() !== '') {
    const found = await findPieces(actor, wish.letters, foundMost);
    const pieces = kind ? found.filter((piece) => piece.kind === kind) : found;
    return { pieces, page: 1, pages: 1, total: pieces.length, kinds };
  }
  const total = kind ? (kinds.find((each) => each.kind === kind)?.count ?? 0) : everything;
  const pages = Math.max(1, Math.ceil(total / piecesAPage));
  const page = Math.min(wish.page, pages);
  const ofKind = kind ? Prisma.sql`WHERE kind = ${kind}::"Kind"` : Prisma.empty;
  const named = Prisma.sql`SELECT id, 0 AS rank, 0::real AS far FROM "Sku" ${ofKind}`;
  const pieces = await piecesIn(db(), named, piecesAPage, (page - 1) * piecesAPage);
  return { pieces, page, pages, total, kinds };
}

async function countKinds() {
  const rows = await db().sku.groupBy({ by: ['kind'], _count: true, orderBy: { kind: 'asc' } });
  return rows.map((row) => ({ kind: row.kind, count: row._count }));
}

/** A piece with where it stands; what happened to it is a story of its own. */
export type PieceSheet = {
  piece: Piece;
  story: string;
  places: readonly { place: string; onHand: number }[];
  lastSoldAt: Date | null;
  /** The same design in its other kinds, sizes and colourways. */
  others: Piece[];
};

const othersMost = 24;

/**
 * A piece's own page: where it stands, and the same design in its other forms.
 *
 * @returns null when no SKU is exactly this
 */
export async function findPieceSheet(actor: Actor, code: string): Promise<PieceSheet | null> {
  assertAllowed(actor, 'stock.see');
  const named = Prisma.sql`
    SELECT id, 0 AS rank, 0::real AS far FROM "Sku" WHERE code = ${code.trim().toUpperCase()}`;
  const [piece] = await piecesIn(db(), named, 1);
  if (!piece) return null;
  const [places, facts, others] = await Promise.all([
    placesOf(piece.id),
    factsOf(piece.id),
    othersOf(piece),
  ]);
  return { piece, places, ...facts, others };
}

async function placesOf(skuId: string) {
  const levels = await db().stockLevel.findMany({
    where: { skuId },
    select: { onHand: true, place: { select: { name: true } } },
    orderBy: { place: { name: 'asc' } },
    take: 100,
  });
  return levels.map((level) => ({ place: level.place.name, onHand: level.onHand }));
}

async function factsOf(skuId: string) {
  const rows = await db().$queryRaw`
    SELECT design.story,
      (SELECT max(at) FROM "StockMovement" WHERE "skuId" = sku.id AND reason = 'sold')
        AS "lastSoldAt"
    FROM "Sku" sku JOIN "Design" design ON design.id = sku."designId"
    WHERE sku.id = ${skuId}::uuid`;
  const [facts] = z.tuple([factsRow]).parse(rows);
  return facts;
}

const factsRow = z.object({
  story: z.string(),
  lastSoldAt: z.date().nullable(),
});

async function othersOf(piece: Piece): Promise<Piece[]> {
  const named = Prisma.sql`SELECT id, 0 AS rank, 0::real AS far FROM "Sku"
    WHERE "designId" = ${piece.designId}::uuid AND id <> ${piece.id}::uuid`;
  return piecesIn(db(), named, othersMost);
}
