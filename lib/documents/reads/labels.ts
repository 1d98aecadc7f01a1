import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { isPieceKind } from '@/lib/catalogue/rules';
import type { TypedPiece } from '@/lib/catalogue/rules/typed-pieces';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import type { LabelPiece } from '../rules/labels/words';

/** The most labels that are printed at once. */
export const labelsMost = 500;

/** What is to be labelled: pieces as they were typed, or all that stands at a place. */
export type LabelsAsked = { typed: readonly TypedPiece[] } | { placeId: string };

/** The labels in their order, and the codes that nobody knows. */
export type LabelsFound = { pieces: LabelPiece[]; unknown: string[]; isCutOff: boolean };

const labelRow = z.object({
  sku: z.string(),
  gtin: z.string().nullable(),
  title: z.string(),
  kind: z.string().refine(isPieceKind),
  colourway: z.string(),
  widthUm: z.number(),
  heightUm: z.number(),
  depthUm: z.number().nullable(),
  weightG: z.number().nullable(),
  priceCents: z.bigint(),
  making: z.enum(['open_stock', 'one_off', 'edition']),
  editionSize: z.number().nullable(),
  grade: z.enum(['first', 'second', 'irregular']),
  flaw: z.string(),
  foodUse: z.enum(['not_proven', 'decorative_only', 'proven']),
  madeInYear: z.number().nullable(),
  medium: z.string(),
  onHand: z.number(),
  numbers: z.array(z.number()),
});

type LabelRow = z.infer<typeof labelRow>;

/**
 * Pieces as their labels tell them, with the price of today; at a fair's place with the fair's.
 *
 * A place gives one label for each piece that stands there, an edition's with their numbers. At
 * most {@link labelsMost}.
 */
export async function findLabels(actor: Actor, asked: LabelsAsked): Promise<LabelsFound> {
  assertAllowed(actor, 'stock.see');
  const all = 'placeId' in asked ? await atPlace(asked.placeId) : await ofTyped(asked.typed);
  const pieces = all.pieces.slice(0, labelsMost);
  return { ...all, pieces, isCutOff: all.pieces.length > labelsMost };
}

async function atPlace(placeId: string): Promise<Omit<LabelsFound, 'isCutOff'>> {
  const rows = await rowsOf(placeId, Prisma.sql`level."onHand" > 0`);
  const pieces = rows.flatMap((row) => {
    if (row.numbers.length > 0) return row.numbers.map((number) => pieceOf(row, number));
    return Array.from({ length: Math.min(row.onHand, labelsMost + 1) }, () => pieceOf(row, null));
  });
  return { pieces, unknown: [] };
}

async function ofTyped(typed: readonly TypedPiece[]): Promise<Omit<LabelsFound, 'isCutOff'>> {
  const codes = JSON.stringify(typed.map((piece) => piece.code));
  const { counterId } = await getGallery();
  const named = Prisma.sql`(sku.code IN (SELECT json_array_elements_text(${codes}::json))
    OR sku.gtin IN (SELECT json_array_elements_text(${codes}::json)))`;
  const rows = await rowsOf(counterId, named);
  const rowOf = new Map(rows.map((row) => [row.sku, row]));
  for (const row of rows) if (row.gtin !== null) rowOf.set(row.gtin, row);
  const found = typed.map((piece) => ({ piece, row: rowOf.get(piece.code) }));
  return {
    pieces: found.flatMap(({ piece, row }) =>
      row
        ? Array.from({ length: Math.min(piece.quantity, labelsMost + 1) }, () =>
            pieceOf(row, piece.number),
          )
        : [],
    ),
    unknown: found.flatMap(({ piece, row }) => (row ? [] : [piece.code])),
  };
}

async function rowsOf(placeId: string, which: Prisma.Sql): Promise<LabelRow[]> {
  const { timeZone } = await getGallery();
  const today = dayOf(now(), timeZone);
  const found = await db().$queryRaw`
    SELECT sku.code AS sku, sku.gtin, design.title, sku.kind::text AS kind,
      colourway.name AS colourway, sku."widthUm", sku."heightUm", sku."depthUm", sku."weightG",
      coalesce(fair."priceCents", price_on(sku.id, ${today}::date)) AS "priceCents",
      sku.making::text AS making, edition.size AS "editionSize", sku.grade::text AS grade,
      sku.flaw, sku."foodUse"::text AS "foodUse", sku."madeInYear", sku.medium,
      coalesce(level."onHand", 0)::int AS "onHand",
      ARRAY(SELECT number FROM "EditionPiece" piece WHERE piece."skuId" = sku.id
        AND piece."placeId" = ${placeId}::uuid ORDER BY number)::int[] AS numbers
    FROM "Sku" sku
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    LEFT JOIN "Edition" edition ON edition."skuId" = sku.id
    LEFT JOIN "StockLevel" level ON level."skuId" = sku.id AND level."placeId" = ${placeId}::uuid
    LEFT JOIN "FairPrice" fair ON fair."skuId" = sku.id
      AND fair."fairId" = (SELECT id FROM "Fair" WHERE "placeId" = ${placeId}::uuid)
    WHERE ${which}
    ORDER BY design.title, sku.code
    LIMIT ${labelsMost + 1}`;
  return z.array(labelRow).parse(found);
}

function pieceOf(row: LabelRow, number: number | null): LabelPiece {
  return { ...row, number: row.making === 'edition' ? number : null };
}
