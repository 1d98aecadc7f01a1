import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { isPieceKind, kindWords } from '@/lib/catalogue/rules';
import type { Cents } from '@/lib/money/rules';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import type { StandingRow } from '../rules/count';

/** The most SKUs that one fair's take list has. */
const listMost = 1_000;

/** One SKU of a take list: what went there, what became of it, what it costs there. */
export type TakenPiece = {
  skuId: string;
  sku: string;
  title: string;
  what: string;
  size: string;
  /** As on the day that was asked for, at home and there. */
  homePriceCents: Cents;
  fairPriceCents: Cents | null;
  out: number;
  back: number;
  sold: number;
  /** Broken, missing, or counted otherwise. */
  lost: number;
  there: number;
  /** The numbers of an edition that stand there, ascending. */
  numbers: number[];
};

const takenRow = z.object({
  skuId: z.string(),
  sku: z.string(),
  title: z.string(),
  kind: z.string().refine(isPieceKind),
  colourway: z.string(),
  widthUm: z.number(),
  heightUm: z.number(),
  depthUm: z.number().nullable(),
  homePriceCents: z.bigint(),
  fairPriceCents: z.bigint().nullable(),
  out: z.number(),
  back: z.number(),
  sold: z.number(),
  lost: z.number(),
  there: z.number(),
  numbers: z.array(z.number()),
});

/**
 * The take list of a fair, by title: out, back, sold, lost and what stands there, which always add
 * up; one statement.
 *
 * @param on the day whose home prices are told, `YYYY-MM-DD`
 */
export async function readTakeList(
  from: Prisma.TransactionClient,
  fair: { fairId: string; placeId: string; on: string; lengthUnit: LengthSystem },
): Promise<TakenPiece[]> {
  const { fairId, placeId, on, lengthUnit } = fair;
  const found = await from.$queryRaw`
    SELECT sku.id AS "skuId", sku.code AS sku, design.title, sku.kind::text AS kind,
      colourway.name AS colourway, sku."widthUm", sku."heightUm", sku."depthUm",
      price_on(sku.id, ${on}::date) AS "homePriceCents", price."priceCents" AS "fairPriceCents",
      moved.out, moved.back, moved.sold, moved.lost, coalesce(level."onHand", 0)::int AS there,
      ARRAY(SELECT number FROM "EditionPiece" piece WHERE piece."skuId" = sku.id
        AND piece."placeId" = ${placeId}::uuid ORDER BY number)::int[] AS numbers
    FROM (
      SELECT "skuId",
        coalesce(sum(quantity) FILTER (WHERE reason = 'moved' AND quantity > 0), 0)::int AS out,
        coalesce(-sum(quantity) FILTER (WHERE reason = 'moved' AND quantity < 0), 0)::int AS back,
        coalesce(-sum(quantity) FILTER (WHERE reason IN ('sold', 'returned')), 0)::int AS sold,
        coalesce(-sum(quantity) FILTER (WHERE reason NOT IN ('moved', 'sold', 'returned')), 0)::int
          AS lost
      FROM "StockMovement" WHERE "placeId" = ${placeId}::uuid GROUP BY "skuId"
    ) moved
    JOIN "Sku" sku ON sku.id = moved."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    LEFT JOIN "StockLevel" level ON level."skuId" = sku.id AND level."placeId" = ${placeId}::uuid
    LEFT JOIN "FairPrice" price ON price."skuId" = sku.id AND price."fairId" = ${fairId}::uuid
    ORDER BY design.title, sku.code
    LIMIT ${listMost}`;
  return z
    .array(takenRow)
    .parse(found)
    .map(({ kind, colourway, widthUm, heightUm, depthUm, ...row }) => ({
      ...row,
      what: `${kindWords(kind)}, ${colourway}`,
      size: formatSize({ widthUm, heightUm, depthUm }, lengthUnit),
    }));
}

/**
 * What stands at a fair, row by row: a SKU, or each number of an edition.
 *
 * @example an edition with numbers 3 and 4 there gives two rows of one piece
 */
export function standingRows(list: readonly TakenPiece[]): StandingRow[] {
  return list.flatMap(({ skuId, sku, title, size, there, numbers }): StandingRow[] => {
    const row = { skuId, what: `${size} · ${sku}` };
    if (there <= 0) return [];
    if (numbers.length === 0) return [{ ...row, key: skuId, editionNumber: null, title, there }];
    return numbers.map((number) => ({
      ...{ ...row, key: `${skuId}#${number}`, editionNumber: number },
      ...{ title: `${title}, number ${number}`, there: 1 },
    }));
  });
}
