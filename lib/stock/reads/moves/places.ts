import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { Prisma } from '@/generated/prisma/client';
import { db } from '@/lib/platform/db/client';
import { piecesIn, type Piece } from '../../reads';
import { placeKinds, type PlaceKind } from '../../rules/moves/place';

const kind = z.enum(placeKinds.map((each) => each.kind));
const placesMost = 200;

/** A place in the list of places. */
export type PlaceListed = {
  id: string;
  name: string;
  kind: PlaceKind;
  isClosed: boolean;
  isCounter: boolean;
  skus: number;
  pieces: number;
  held: number;
  /** At the prices of today, in cents. */
  retailCents: bigint;
  /** A count that is neither booked nor left. */
  openCount: number | null;
};

const listedRow = z.object({
  id: z.string(),
  name: z.string(),
  kind,
  isClosed: z.boolean(),
  isCounter: z.boolean(),
  skus: z.number(),
  pieces: z.number(),
  held: z.number(),
  retailCents: z.bigint(),
  openCount: z.number().nullable(),
});

/**
 * The places with what stands there, the counter's first and closed ones last; at most 200.
 *
 * @param wish with an id, that one alone
 */
export async function listPlaces(actor: Actor, wish: { id?: string } = {}): Promise<PlaceListed[]> {
  assertAllowed(actor, 'stock.see');
  const one = wish.id === undefined ? Prisma.empty : Prisma.sql`WHERE place.id = ${wish.id}::uuid`;
  const rows = await db().$queryRaw`
    WITH there AS (
      SELECT level."placeId", count(*)::int AS skus, sum(level."onHand")::int AS pieces,
        sum(level.held)::int AS held,
        sum(level."onHand" * price_on(level."skuId", (now() AT TIME ZONE gallery."timeZone")::date))
          ::bigint AS "retailCents"
      FROM "StockLevel" level CROSS JOIN "Gallery" gallery
      WHERE level."onHand" > 0 GROUP BY level."placeId"
    )
    SELECT place.id, place.name, place.kind::text, place."closedAt" IS NOT NULL AS "isClosed",
      place.id = gallery."counterId" AS "isCounter", coalesce(there.skus, 0)::int AS skus,
      coalesce(there.pieces, 0)::int AS pieces, coalesce(there.held, 0)::int AS held,
      coalesce(there."retailCents", 0)::bigint AS "retailCents",
      (SELECT min(number) FROM "StockCount" WHERE "placeId" = place.id
        AND "bookedAt" IS NULL AND "leftAt" IS NULL) AS "openCount"
    FROM "Place" place CROSS JOIN "Gallery" gallery
    LEFT JOIN there ON there."placeId" = place.id
    ${one}
    ORDER BY "isClosed", "isCounter" DESC, place.name LIMIT ${placesMost}`;
  return z.array(listedRow).parse(rows);
}

/** A piece at a place. `numbers` are those of its edition that stand there. */
export type PieceStanding = Piece & { there: number; heldThere: number; numbers: number[] };

/** What stands at a place, a page of it. */
export type Standing = { pieces: PieceStanding[]; page: number; pages: number; skus: number };

/** How many SKUs one page of a place shows. */
export const standingAPage = 48;

const thereRow = z.object({
  skuId: z.string(),
  there: z.number(),
  held: z.number(),
  numbers: z.array(z.number()),
});

/**
 * What stands at a place, by the titles of the pieces.
 *
 * @param wish `letters` find by title and SKU, empty for all; `page` from 1
 */
export async function listStanding(
  actor: Actor,
  placeId: string,
  wish: { letters: string; page: number; limit?: number },
): Promise<Standing> {
  assertAllowed(actor, 'stock.see');
  const limit = wish.limit ?? standingAPage;
  const within = `%${wish.letters.trim().replace(/[\\%_]/g, (sign) => `\\${sign}`)}%`;
  const here = Prisma.sql`FROM "StockLevel" level
    JOIN "Sku" sku ON sku.id = level."skuId" JOIN "Design" design ON design.id = sku."designId"
    WHERE level."placeId" = ${placeId}::uuid AND level."onHand" > 0
      AND concat_ws(' ', design.title, sku.code, sku.gtin) ILIKE ${within}`;
  const [counted] = z
    .tuple([z.object({ skus: z.number() })])
    .parse(await db().$queryRaw`SELECT count(*)::int AS skus ${here}`);
  const pages = Math.max(1, Math.ceil(counted.skus / limit));
  const page = Math.min(wish.page, pages);
  const named = Prisma.sql`SELECT sku.id, 0 AS rank, 0::real AS far ${here}`;
  const pieces = await piecesIn(db(), named, limit, (page - 1) * limit);
  const rows = await db().$queryRaw`
    SELECT level."skuId", level."onHand" AS there, level.held,
      coalesce((SELECT array_agg(piece.number ORDER BY piece.number) FROM "EditionPiece" piece
        WHERE piece."skuId" = level."skuId" AND piece."placeId" = level."placeId"), '{}') AS numbers
    FROM "StockLevel" level
    WHERE level."placeId" = ${placeId}::uuid
      AND level."skuId" = ANY(${pieces.map((piece) => piece.id)}::uuid[])`;
  const thereOf = new Map(
    z
      .array(thereRow)
      .parse(rows)
      .map((each) => [each.skuId, each]),
  );
  const standing = pieces.map((piece) => {
    const { there = 0, held: heldThere = 0, numbers = [] } = thereOf.get(piece.id) ?? {};
    return { ...piece, there, heldThere, numbers };
  });
  return { pieces: standing, page, pages, skus: counted.skus };
}
