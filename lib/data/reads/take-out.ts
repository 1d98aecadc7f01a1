import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { isPieceKind, kindWords } from '@/lib/catalogue/rules';
import { makings, makingWords } from '@/lib/catalogue/rules/making';
import { dayFromDate } from '@/lib/dates/rules';
import { plainCents } from '@/lib/money/rules';
import { formatDecimal } from '@/lib/money/rules/decimal';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { csvText } from '@/lib/files/rules/csv';
import { peopleRows } from '../rules/people';
import { salesRows, type FiledLine, type FiledSale } from '../rules/sales-file';
import { readPeople, rowsMost } from './known';

/**
 * Everyone in the address book as a CSV file, by name; it can be brought in again.
 *
 * @returns the text of the file, at most half a million people
 */
export async function peopleFile(actor: Actor): Promise<string> {
  assertAllowed(actor, 'data.take_out');
  return csvText(peopleRows(await readPeople(db())));
}

const stockRow = z.object({
  code: z.string(),
  title: z.string(),
  kind: z.string().refine(isPieceKind),
  widthUm: z.number(),
  heightUm: z.number(),
  depthUm: z.number().nullable(),
  colourway: z.string(),
  priceCents: z.bigint(),
  costCents: z.bigint().nullable(),
  weightG: z.number().nullable(),
  here: z.number(),
  gtin: z.string().nullable(),
  making: z.enum(makings.map((each) => each.making)),
  grade: z.string(),
  firstCode: z.string().nullable(),
  flaw: z.string(),
  elsewhere: z.string().nullable(),
  numbers: z.string().nullable(),
});

const stockHeading = [
  ...['code', 'title', 'kind', 'width (mm)', 'height (mm)', 'depth (mm)', 'colourway', 'price'],
  ...['cost', 'weight (g)', 'here', 'barcode', 'making'],
  ...['grade', 'first of it', 'flaw', 'elsewhere', 'edition numbers'],
];

/**
 * Every SKU with its price and how many stand where, as a CSV file, by code. The columns up to the
 * making are those of a stock list, so that it can be brought in as one; the last five are told
 * and passed over then.
 */
export async function stockFile(actor: Actor): Promise<string> {
  assertAllowed(actor, 'data.take_out');
  const { counterId } = await getGallery();
  const found = await db().$queryRaw`
    SELECT sku.code, design.title, sku.kind::text AS kind, sku."widthUm", sku."heightUm",
      sku."depthUm", colourway.name AS colourway, sku."priceCents", sku."costCents",
      sku."weightG", coalesce(level."onHand", 0) AS here, sku.gtin, sku.making::text AS making,
      sku.grade::text AS grade, first.code AS "firstCode", sku.flaw,
      (SELECT string_agg(place.name || ' ' || other."onHand", '; ' ORDER BY place.name)
        FROM "StockLevel" other JOIN "Place" place ON place.id = other."placeId"
        WHERE other."skuId" = sku.id AND other."placeId" <> ${counterId}::uuid
          AND other."onHand" > 0) AS elsewhere,
      (SELECT string_agg(numbered.number || ' ' || place.name, '; ' ORDER BY numbered.number)
        FROM "EditionPiece" numbered JOIN "Place" place ON place.id = numbered."placeId"
        WHERE numbered."skuId" = sku.id) AS numbers
    FROM "Sku" sku
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    LEFT JOIN "Sku" first ON first.id = sku."firstSkuId"
    LEFT JOIN "StockLevel" level ON level."skuId" = sku.id
      AND level."placeId" = ${counterId}::uuid
    ORDER BY sku.code LIMIT ${rowsMost}`;
  return csvText([stockHeading, ...z.array(stockRow).parse(found).map(stockCells)]);
}

function stockCells(sku: z.infer<typeof stockRow>): string[] {
  return [
    ...[sku.code, sku.title, kindWords(sku.kind), mm(sku.widthUm), mm(sku.heightUm)],
    ...[sku.depthUm === null ? '' : mm(sku.depthUm), sku.colourway, plainCents(sku.priceCents)],
    sku.costCents === null ? '' : plainCents(sku.costCents),
    sku.weightG === null ? '' : String(sku.weightG),
    ...[String(sku.here), sku.gtin ?? '', makingWords(sku.making)],
    ...[sku.grade, sku.firstCode ?? '', sku.flaw, sku.elsewhere ?? '', sku.numbers ?? ''],
  ];
}

function mm(um: number): string {
  return formatDecimal({ units: BigInt(um), scale: 3 });
}

/** How many sales are read at once. */
const salesAtOnce = 2_000;

/**
 * Every sale as a CSV file, in the order of their numbers: one row for each line, with the taxes,
 * the tenders and the total on the first. Sales of pieces, of things typed in, of delivery and
 * work can be brought in again; those of commissions, vouchers and deposits are told.
 */
export async function salesFile(actor: Actor): Promise<string> {
  assertAllowed(actor, 'data.take_out');
  const sales: FiledSale[] = [];
  for (let after = 0, more = true; more;) {
    const rows = await readSalesAfter(after);
    sales.push(...rows.map(filed));
    after = rows.at(-1)?.number ?? after;
    more = rows.length === salesAtOnce;
  }
  return csvText(salesRows(sales));
}

async function readSalesAfter(number: number) {
  return db().sale.findMany({
    where: { number: { gt: number } },
    orderBy: { number: 'asc' },
    take: salesAtOnce,
    select: {
      ...{ number: true, soldAt: true, soldOn: true, channel: true, delivery: true },
      ...{ deliverTo: true, exemptWhy: true, totalCents: true, collectorId: true },
      place: { select: { name: true } },
      taxPlace: { select: { name: true } },
      collector: { select: { name: true, erasedAt: true } },
      staff: { select: { name: true } },
      lines: {
        orderBy: { position: 'asc' },
        select: {
          ...{ kind: true, title: true, what: true, quantity: true, unitPriceCents: true },
          ...{ netCents: true, taxKind: true, taxableCents: true, taxCents: true },
          unitCostCents: true,
          sku: { select: { code: true } },
          discounts: {
            orderBy: { id: 'asc' },
            select: { kind: true, amountCents: true, reason: true },
          },
          movements: {
            where: { reason: 'sold', editionNumber: { not: null } },
            orderBy: { editionNumber: 'asc' },
            select: { editionNumber: true },
          },
        },
      },
      taxes: {
        orderBy: { authority: 'asc' },
        select: { authority: true, ratePercent: true, taxableCents: true, taxCents: true },
      },
      tenders: {
        orderBy: { position: 'asc' },
        select: { kind: true, amountCents: true, givenCents: true, reference: true },
      },
    },
  });
}

type SaleRow = Awaited<ReturnType<typeof readSalesAfter>>[number];

function filed(sale: SaleRow): FiledSale {
  const { soldAt, channel, delivery, exemptWhy, totalCents, tenders } = sale;
  const deliverTo = sale.collector?.erasedAt ? '' : sale.deliverTo;
  return {
    ...{ receipt: String(sale.number), soldAt, soldOn: dayFromDate(sale.soldOn), channel },
    ...{ place: sale.place.name, taxPlace: sale.taxPlace.name, soldBy: sale.staff.name },
    ...{ person: sale.collector?.name ?? '', personKey: sale.collectorId ?? '' },
    ...{ delivery, deliverTo, exemptWhy, tenders, totalCents },
    lines: sale.lines.map(filedLine),
    taxes: sale.taxes.map((tax) => ({ ...tax, ratePercent: tax.ratePercent.toString() })),
  };
}

function filedLine(line: SaleRow['lines'][number]): FiledLine {
  const { sku, movements, ...rest } = line;
  const numbers = movements.flatMap((movement) => movement.editionNumber ?? []);
  return { ...rest, code: sku?.code ?? '', numbers };
}
