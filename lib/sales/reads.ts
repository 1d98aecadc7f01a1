import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { isPieceKind, kindWords } from '@/lib/catalogue/rules';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { ratesOn, type TaxPart } from '@/lib/tax/rules';
import { invariant } from '@/lib/platform/invariant';
import { db } from '@/lib/platform/db/client';
import { z } from 'zod';
import type { PieceForSale } from './rules';
import type { LastSold } from './rules/refusals';

const pieceRow = z.object({
  skuId: z.string(),
  sku: z.string(),
  designId: z.string(),
  title: z.string(),
  kind: z.string().refine(isPieceKind),
  colourway: z.string(),
  widthUm: z.number(),
  heightUm: z.number(),
  depthUm: z.number().nullable(),
  priceCents: z.bigint(),
  costCents: z.bigint().nullable(),
  onHand: z.number(),
  held: z.number(),
  making: z.enum(['open_stock', 'one_off', 'edition']),
  grade: z.enum(['first', 'second', 'irregular']),
  weightG: z.number().nullable(),
});

/** Where pieces are sold from, on which day, and how their sizes are told. */
export type SoldFrom = { placeId: string; on: Day; lengthUnit: LengthSystem };

/**
 * The pieces as they are at this moment, with their price on that day and how many stand at a
 * place; one statement. At a fair its own prices hold.
 *
 * @returns by SKU id; an id that is not in the catalogue is left out
 */
export async function readPiecesForSale(
  from: Prisma.TransactionClient,
  skuIds: readonly string[],
  { placeId, on, lengthUnit }: SoldFrom,
): Promise<Map<string, PieceForSale>> {
  const found = await from.$queryRaw`
    SELECT sku.id AS "skuId", sku.code AS sku, sku."designId", design.title, sku.kind::text AS kind,
      colourway.name AS colourway, sku."widthUm", sku."heightUm", sku."depthUm",
      coalesce(fair."priceCents", price_on(sku.id, ${on}::date)) AS "priceCents", sku."costCents",
      coalesce(level."onHand", 0)::int AS "onHand", coalesce(level.held, 0)::int AS held,
      sku.making::text AS making, sku.grade::text AS grade, sku."weightG"
    FROM "Sku" sku
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    LEFT JOIN "StockLevel" level ON level."skuId" = sku.id AND level."placeId" = ${placeId}::uuid
    LEFT JOIN "FairPrice" fair ON fair."skuId" = sku.id
      AND fair."fairId" = (SELECT id FROM "Fair" WHERE "placeId" = ${placeId}::uuid)
    WHERE sku.id = ANY(${[...skuIds]}::uuid[])
    ORDER BY sku.id`;
  const rows = z.array(pieceRow).parse(found);
  return new Map(rows.map((row) => [row.skuId, pieceOf(row, lengthUnit)]));
}

function pieceOf(row: z.infer<typeof pieceRow>, lengthUnit: LengthSystem): PieceForSale {
  const size = formatSize(row, lengthUnit);
  const { skuId, sku, designId, title, priceCents, costCents, onHand, held } = row;
  const { making, grade, weightG } = row;
  const what = `${kindWords(row.kind)}, ${row.colourway} · ${size} · ${sku}`;
  const words = { skuId, sku, designId, title, what, size };
  return { ...words, priceCents, costCents, onHand, held, making, grade, weightG, last: null };
}

const lastRow = z.object({
  skuId: z.string(),
  soldAt: z.date(),
  by: z.string(),
  channel: z.enum(['counter', 'fair', 'shipped', 'commission', 'consigned', 'wholesale']),
});

/** When each of these was last sold, by whom and where; one statement, and only when it is asked. */
export async function readLastSold(
  from: Prisma.TransactionClient,
  skuIds: readonly string[],
): Promise<Map<string, LastSold>> {
  const found = await from.$queryRaw(Prisma.sql`
    SELECT DISTINCT ON (movement."skuId") movement."skuId", sale."soldAt", staff.name AS by,
      sale.channel::text AS channel
    FROM "StockMovement" movement
    JOIN "SaleLine" line ON line.id = movement."saleLineId"
    JOIN "Sale" sale ON sale.id = line."saleId"
    JOIN "Staff" staff ON staff.id = sale."staffId"
    WHERE movement."skuId" = ANY(${[...skuIds]}::uuid[]) AND movement.reason = 'sold'
    ORDER BY movement."skuId", movement.id DESC`);
  return new Map(
    z
      .array(lastRow)
      .parse(found)
      .map(({ skuId, ...last }) => [skuId, last]),
  );
}

/** A tax place and what each authority charges there on a day, in the order of their names. */
export async function readTaxParts(
  taxPlaceId: string,
  on: Day,
  from: Prisma.TransactionClient = db(),
): Promise<{ name: string; parts: TaxPart[] }> {
  const place = await from.taxPlace.findUnique({
    where: { id: taxPlaceId },
    select: {
      name: true,
      rates: {
        where: { fromOn: { lte: dateFromDay(on) } },
        orderBy: [{ authority: 'asc' }, { fromOn: 'asc' }],
        select: { authority: true, ratePercent: true, fromOn: true, untilOn: true },
      },
    },
  });
  invariant(place, 'The place whose tax is charged exists.');
  const dated = place.rates.map((rate) => ({
    name: rate.authority,
    ratePercent: rate.ratePercent.toString(),
    fromOn: dayFromDate(rate.fromOn),
    untilOn: rate.untilOn && dayFromDate(rate.untilOn),
  }));
  const parts = ratesOn(dated, on).map(({ name, ratePercent }) => ({ name, ratePercent }));
  return { name: place.name, parts };
}
