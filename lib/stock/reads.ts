import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import type { Actor } from '@/lib/access/rules';
import { assertAllowed } from '@/lib/access/reads';
import { kindWords, pieceKinds } from '@/lib/catalogue/rules';
import { mayMeanTitle } from '@/lib/catalogue/rules/letters';
import { db } from '@/lib/platform/db/client';

/** A picture of a piece: where it is served from, and its true size in pixels. */
export type PiecePicture = { src: string; alt: string; width: number; height: number };

const kind = z.enum(pieceKinds.map((each) => each.kind));

const pieceRow = z.object({
  id: z.string(),
  code: z.string(),
  designId: z.string(),
  title: z.string(),
  kind,
  making: z.enum(['open_stock', 'one_off', 'edition']),
  colourway: z.string(),
  widthUm: z.number(),
  heightUm: z.number(),
  depthUm: z.number().nullable(),
  weightG: z.number().nullable(),
  priceCents: z.bigint(),
  gtin: z.string().nullable(),
  pictureId: z.string().nullable(),
  pictureWidth: z.number().nullable(),
  pictureHeight: z.number().nullable(),
  grade: z.enum(['first', 'second', 'irregular']),
  /** At the counter's place. */
  onHand: z.number(),
  /** Of those, how many are kept back for somebody. */
  held: z.number(),
  /** At all the other places together. */
  elsewhere: z.number(),
});

/** A SKU as the counter and the stock room see it. Lengths in micrometres, weight in grams. */
export type Piece = Omit<
  z.infer<typeof pieceRow>,
  'pictureId' | 'pictureWidth' | 'pictureHeight'
> & {
  /** Kind and colourway in words, as on the wall label. */
  what: string;
  pictureUrl: string | null;
  picture: PiecePicture | null;
};

/**
 * Pieces by what a person types or scans: a whole SKU or barcode first, then SKUs that begin so,
 * then pieces whose title, colour and kind have these letters; when there is none of these,
 * titles that look alike, so that a slip of the finger still finds the tern.
 *
 * @param text  nothing typed finds nothing
 * @param limit at most this many, 50 at the very most
 */
export async function findPieces(actor: Actor, text: string, limit = 12): Promise<Piece[]> {
  assertAllowed(actor, 'stock.see');
  const typed = text.trim().replace(/\s+/g, ' ').slice(0, findLengthMost);
  if (typed === '') return [];
  const most = Math.min(limit, findLimitMost);
  const found = await piecesIn(db(), lettersOf(typed), most);
  return found.length > 0 ? found : piecesIn(db(), await lookAlikes(typed), most);
}

/** The longest text that is looked for, in characters. */
const findLengthMost = 80;
const findLimitMost = 50;
/** How alike a title must be (0 to 1) to be looked at for slips of the finger. */
const alikeEnough = 0.1;
const alikeMost = 300;

/**
 * The piece whose SKU or barcode is exactly this, in any case of letters; null when there is none.
 */
export async function findByCode(actor: Actor, code: string): Promise<Piece | null> {
  assertAllowed(actor, 'stock.see');
  const [piece] = await piecesIn(db(), sameCode(code), 1);
  return piece ?? null;
}

/** Pieces by their ids, in the order of their titles: for a slip that knows what is on it. */
export async function listPiecesById(actor: Actor, ids: readonly string[]): Promise<Piece[]> {
  assertAllowed(actor, 'stock.see');
  const known = ids.filter((id) => z.uuid().safeParse(id).success).slice(0, idsMost);
  if (known.length === 0) return [];
  const named = Prisma.sql`SELECT id, 0 AS rank, 0::real AS far FROM "Sku"
    WHERE id = ANY(${known}::uuid[])`;
  return piecesIn(db(), named, idsMost);
}

const idsMost = 500;

function sameCode(code: string): Prisma.Sql {
  const typed = code.trim();
  return Prisma.sql`SELECT id, 0 AS rank, 0::real AS far FROM "Sku"
    WHERE code = ${typed.toUpperCase()} OR gtin = ${typed}`;
}

function lettersOf(typed: string): Prisma.Sql {
  const codeStart = `${escapeLike(typed.toUpperCase())}%`;
  const words = typed.split(' ').map((word) => `%${escapeLike(word)}%`);
  return Prisma.sql`
    ${sameCode(typed)}
    UNION ALL
    SELECT id, 1, 0 FROM "Sku" WHERE code LIKE ${codeStart}
    UNION ALL
    SELECT sku.id, 2, 1 - word_similarity(${typed}, design.title)
    FROM "Sku" sku
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    WHERE concat_ws(' ', design.title, colourway.name, replace(sku.kind::text, '_', ' '), sku.code)
      ILIKE ALL(${words}::text[])`;
}

async function lookAlikes(typed: string): Promise<Prisma.Sql> {
  const near = await db().$queryRaw<{ id: string; title: string }[]>`
    SELECT id, title FROM "Design"
    WHERE word_similarity(${typed}, title) >= ${alikeEnough}
    ORDER BY word_similarity(${typed}, title) DESC, title LIMIT ${alikeMost}`;
  const meant = near.filter((design) => mayMeanTitle(typed, design.title));
  return Prisma.sql`
    SELECT sku.id, 3 AS rank, (1 - word_similarity(${typed}, design.title))::real AS far
    FROM "Sku" sku JOIN "Design" design ON design.id = sku."designId"
    WHERE design.id = ANY(${meant.map((design) => design.id)}::uuid[])`;
}

function escapeLike(text: string): string {
  return text.replace(/[\\%_]/g, (sign) => `\\${sign}`);
}

/**
 * The pieces that a query names, best first, with what stands at the counter's place and
 * elsewhere. For this area's own reads.
 *
 * @param named rows of id, rank (lower is better) and far (lower is better)
 */
export async function piecesIn(
  from: Prisma.TransactionClient,
  named: Prisma.Sql,
  limit: number,
  skip = 0,
): Promise<Piece[]> {
  const rows = await from.$queryRaw`
    WITH named AS (${named}),
    best AS (
      SELECT DISTINCT ON (id) id, rank, far FROM named ORDER BY id, rank, far
    ),
    chosen AS (
      SELECT best.*, sku.code, design.title FROM best
      JOIN "Sku" sku ON sku.id = best.id
      JOIN "Design" design ON design.id = sku."designId"
      ORDER BY rank, far, design.title, sku.code LIMIT ${limit} OFFSET ${skip}
    )
    SELECT sku.id, sku.code, sku."designId", chosen.title, sku.kind::text, sku.making::text,
      colourway.name AS colourway, sku."widthUm", sku."heightUm", sku."depthUm", sku."weightG",
      price_on(sku.id, (now() AT TIME ZONE counter."timeZone")::date) AS "priceCents", sku.gtin,
      sku.grade::text AS grade,
      picture.id AS "pictureId", picture."widthPx" AS "pictureWidth",
      picture."heightPx" AS "pictureHeight",
      coalesce(sum(level."onHand") FILTER (WHERE level."placeId" = counter."counterId"), 0)::int
        AS "onHand",
      coalesce(sum(level.held) FILTER (WHERE level."placeId" = counter."counterId"), 0)::int
        AS held,
      coalesce(sum(level."onHand") FILTER (WHERE level."placeId" <> counter."counterId"), 0)::int
        AS elsewhere
    FROM chosen
    JOIN "Sku" sku ON sku.id = chosen.id
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    CROSS JOIN "Gallery" counter
    LEFT JOIN "StoredFile" picture ON picture.id = coalesce(sku."pictureId", design."pictureId")
    LEFT JOIN "StockLevel" level ON level."skuId" = sku.id
    GROUP BY sku.id, chosen.title, chosen.rank, chosen.far, colourway.name,
      counter."timeZone", picture.id, picture."widthPx", picture."heightPx"
    ORDER BY chosen.rank, chosen.far, chosen.title, sku.code`;
  return z.array(pieceRow).parse(rows).map(pieceFrom);
}

function pieceFrom(row: z.infer<typeof pieceRow>): Piece {
  const { pictureId, pictureWidth, pictureHeight, ...piece } = row;
  const what = `${kindWords(piece.kind)}, ${piece.colourway}`;
  const picture =
    pictureId === null
      ? null
      : {
          src: `/files/${pictureId}`,
          alt: `${piece.title}, ${what}`,
          width: pictureWidth ?? pictureSidePx,
          height: pictureHeight ?? pictureSidePx,
        };
  return { ...piece, what, pictureUrl: picture?.src ?? null, picture };
}

/** For a picture whose size nobody kept: square, as most tiles are. */
const pictureSidePx = 900;
