import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { isPieceKind, kindWords } from '@/lib/catalogue/rules';
import { addDays, dateFromDay, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { JobPicture } from './standing';

/** A piece that people bought lately and that the gallery has none left of. */
export type SoldOut = {
  skuId: string;
  code: string;
  title: string;
  /** Kind and colourway in words: `relief tile, celadon over iron`. */
  what: string;
  /** How many were sold in those days. */
  sold: number;
  /** How many of it are under way in the studio. */
  inMaking: number;
  picture: JobPicture | null;
};

const row = z.object({
  skuId: z.uuid(),
  code: z.string(),
  title: z.string(),
  kind: z.string().refine(isPieceKind),
  colourway: z.string(),
  sold: z.number(),
  inMaking: z.number(),
  fileId: z.uuid().nullable(),
  widthPx: z.number().nullable(),
  heightPx: z.number().nullable(),
});

/** How far back sales count, in days. */
export const soldLatelyDays = 30;

/**
 * Open stock that sold in the last thirty days and of which none is left at the gallery; what
 * sold most comes first. One-offs and editions are left out: they are meant to be gone.
 *
 * @param floorId the place where counter sales are made from
 * @returns at most `most`
 */
export async function listSoldOut(
  actor: Actor,
  { floorId, todayOn, most }: { floorId: string; todayOn: Day; most: number },
): Promise<SoldOut[]> {
  assertAllowed(actor, 'stock.see');
  const sinceOn = dateFromDay(addDays(todayOn, -soldLatelyDays));
  const found = await db().$queryRaw`
    WITH sold AS (
      SELECT line."skuId", sum(line.quantity)::int AS sold
      FROM "SaleLine" line JOIN "Sale" sale ON sale.id = line."saleId"
      WHERE sale."soldOn" > ${sinceOn}::date AND line."skuId" IS NOT NULL
      GROUP BY line."skuId")
    SELECT sku.id AS "skuId", sku.code, design.title, sku.kind::text AS kind,
      colourway.name AS colourway, sold.sold, file.id AS "fileId", file."widthPx", file."heightPx",
      coalesce((
        SELECT sum(pieces_under_way(job.id)) FROM "Job" job
        WHERE job."skuId" = sku.id), 0)::int AS "inMaking"
    FROM sold
    JOIN "Sku" sku ON sku.id = sold."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    LEFT JOIN "StoredFile" file ON file.id = coalesce(sku."pictureId", design."pictureId")
    LEFT JOIN "StockLevel" level ON level."skuId" = sku.id AND level."placeId" = ${floorId}::uuid
    WHERE sku.making = 'open_stock' AND coalesce(level."onHand", 0) = 0
    ORDER BY sold.sold DESC, sku.code
    LIMIT ${most}`;
  return z.array(row).parse(found).map(read);
}

function read(piece: z.infer<typeof row>): SoldOut {
  const { skuId, code, title, kind, colourway, sold, inMaking, fileId, widthPx, heightPx } = piece;
  const picture =
    fileId !== null && widthPx !== null && heightPx !== null ? { fileId, widthPx, heightPx } : null;
  const what = `${kindWords(kind)}, ${colourway}`;
  return { skuId, code, title, what, sold, inMaking, picture };
}
