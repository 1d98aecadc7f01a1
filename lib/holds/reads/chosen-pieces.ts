import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { isPieceKind, kindWords } from '@/lib/catalogue/rules';
import type { Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { z } from 'zod';
import type { Chosen } from '../rules/chosen';

/** A chosen piece as it stands at a place: what it is, its price that day, what is free of it. */
export type ChosenPiece = {
  one: Chosen;
  skuId: string;
  title: string;
  what: string;
  priceCents: Cents;
  /** How many stand there and are not kept back. */
  free: number;
  /** The numbers of its edition that are free there; none for anything else. */
  numbers: number[];
};

const pieceRow = z.object({
  skuId: z.string(),
  code: z.string(),
  title: z.string(),
  kind: z.string().refine(isPieceKind),
  colourway: z.string(),
  priceCents: z.bigint(),
  free: z.number(),
  numbers: z.array(z.number()),
});

/**
 * The chosen pieces in the order in which they were chosen; one that is not in the catalogue is
 * left out.
 *
 * @param at the place they stand at and the day whose prices hold
 */
export async function listChosen(
  actor: Actor,
  chosen: readonly Chosen[],
  at: { placeId: string; on: Day },
): Promise<ChosenPiece[]> {
  assertAllowed(actor, 'stock.hold');
  if (chosen.length === 0) return [];
  const codes = chosen.map((one) => one.code);
  const found = await db().$queryRaw`
    SELECT sku.id AS "skuId", sku.code, design.title, sku.kind::text AS kind,
      colourway.name AS colourway, price_on(sku.id, ${at.on}::date) AS "priceCents",
      coalesce(level."onHand" - level.held, 0)::int AS free,
      ARRAY(SELECT piece.number FROM "EditionPiece" piece
        WHERE piece."skuId" = sku.id AND piece."placeId" = ${at.placeId}::uuid
          AND NOT EXISTS (SELECT 1 FROM "Hold" hold WHERE hold."skuId" = sku.id
            AND hold."editionNumber" = piece.number AND hold."endedAt" IS NULL)
        ORDER BY piece.number LIMIT 40) AS numbers
    FROM "Sku" sku
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    LEFT JOIN "StockLevel" level
      ON level."skuId" = sku.id AND level."placeId" = ${at.placeId}::uuid
    WHERE sku.code = ANY(${codes}::text[])
    ORDER BY sku.code`;
  const rows = new Map(
    z
      .array(pieceRow)
      .parse(found)
      .map((row) => [row.code, row]),
  );
  return chosen.flatMap((one) => {
    const row = rows.get(one.code);
    if (!row) return [];
    const { skuId, title, priceCents, free, numbers } = row;
    const what = `${kindWords(row.kind)}, ${row.colourway} · ${row.code}`;
    return [{ one, skuId, title, what, priceCents, free, numbers }];
  });
}
