import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { sameName } from '@/lib/catalogue/rules/piece';
import { collectorKinds } from '@/lib/collectors/rules';
import type { Day } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import { readPiecesForSale } from '@/lib/sales/reads';
import type { Person } from '../rules/people';
import { saleMark, type KnownForSales, type KnownSku } from '../rules/sales';
import type { SaleRead } from '../rules/sales-read';

/** The most people, sales and places that are read at once: far beyond any gallery's. */
export const rowsMost = 500_000;

const personRow = z.object({
  key: z.string(),
  kind: z.enum(collectorKinds),
  name: z.string(),
  email: z.string().nullable(),
  phone: z.string().nullable(),
  street: z.string().nullable(),
  city: z.string().nullable(),
  state: z.string().nullable(),
  postcode: z.string().nullable(),
  note: z.string(),
});

/** Everyone in the address book, by name; those found to be the same as another stand there. */
export async function readPeople(from: Prisma.TransactionClient): Promise<Person[]> {
  const found = await from.$queryRaw`
    SELECT id AS key, kind::text AS kind, name, email, phone, street, city, state, postcode, note
    FROM "Collector" WHERE "mergedIntoId" IS NULL AND "erasedAt" IS NULL
    ORDER BY lower(name), name, id LIMIT ${rowsMost}`;
  return z.array(personRow).parse(found);
}

/**
 * The keys under which nobody is looked up any more: of those found to be the same as another, with
 * the key of that one, and of those who were struck out, with null.
 */
export async function readKeysGone(
  from: Prisma.TransactionClient,
): Promise<ReadonlyMap<string, string | null>> {
  const rows = await from.collector.findMany({
    where: { OR: [{ mergedIntoId: { not: null } }, { erasedAt: { not: null } }] },
    select: { id: true, mergedIntoId: true, erasedAt: true },
  });
  return new Map(
    rows.map(({ id, mergedIntoId, erasedAt }) => [id, erasedAt ? null : mergedIntoId]),
  );
}

/** All that sales of earlier books need to know of what is there already. */
export async function readKnownForSales(
  from: Prisma.TransactionClient,
  read: readonly SaleRead[],
  setting: { gallery: Gallery; todayOn: Day },
): Promise<KnownForSales> {
  const { counterId: placeId, taxPlaceId } = setting.gallery;
  const people = await from.collector.findMany({
    where: { erasedAt: null },
    select: { id: true, name: true, mergedIntoId: true },
  });
  const peopleByName = new Map<string, string[]>();
  for (const { id, name, mergedIntoId } of people) {
    const key = mergedIntoId ?? id;
    const others = peopleByName.get(sameName(name)) ?? [];
    if (!others.includes(key)) peopleByName.set(sameName(name), [...others, key]);
  }
  const select = { id: true, name: true } as const;
  const places = await from.place.findMany({ where: { closedAt: null }, select });
  return {
    skus: await readSkus(from, read, setting),
    peopleByKey: new Set(people.map((person) => person.id)),
    peopleByName,
    places: byName(places),
    taxPlaces: byName(await from.taxPlace.findMany({ select })),
    staff: byName(await from.staff.findMany({ select })),
    sold: await readSold(from),
    usual: { placeId, taxPlaceId },
  };
}

function byName(rows: readonly { id: string; name: string }[]): ReadonlyMap<string, string> {
  return new Map(rows.map((row) => [sameName(row.name), row.id]));
}

const skuRow = z.object({
  skuId: z.string(),
  code: z.string(),
  onHand: z.number(),
  isNumbered: z.boolean(),
  numbersHere: z.array(z.number()),
});

async function readSkus(
  from: Prisma.TransactionClient,
  read: readonly SaleRead[],
  { gallery, todayOn }: { gallery: Gallery; todayOn: Day },
): Promise<ReadonlyMap<string, KnownSku>> {
  const lines = read.flatMap((each) => each.sale?.lines ?? []);
  const codes = JSON.stringify([...new Set(lines.map((line) => line.code))]);
  const found = z.array(skuRow).parse(
    await from.$queryRaw`
      SELECT sku.id AS "skuId", sku.code,
        coalesce((SELECT sum("onHand") FROM "StockLevel" WHERE "skuId" = sku.id), 0)::int
          AS "onHand",
        EXISTS (SELECT 1 FROM "Edition" WHERE "skuId" = sku.id) AS "isNumbered",
        coalesce((SELECT array_agg(number ORDER BY number) FROM "EditionPiece"
          WHERE "skuId" = sku.id AND "placeId" IS NOT NULL), '{}') AS "numbersHere"
      FROM "Sku" sku WHERE sku.code IN (SELECT json_array_elements_text(${codes}::json))
      ORDER BY sku.code`,
  );
  const { counterId: placeId, lengthUnit } = gallery;
  const skuIds = found.map((row) => row.skuId);
  const pieces = await readPiecesForSale(from, skuIds, { placeId, on: todayOn, lengthUnit });
  return new Map(
    found.flatMap(({ code, ...row }): [string, KnownSku][] => {
      const piece = pieces.get(row.skuId);
      if (!piece) return [];
      const { designId, title, what, making, costCents } = piece;
      return [[code, { ...row, designId, title, what, making, costCents }]];
    }),
  );
}

async function readSold(from: Prisma.TransactionClient): Promise<ReadonlyMap<string, number>> {
  const select = { soldAt: true, totalCents: true } as const;
  const sales = await from.sale.findMany({ select, orderBy: { number: 'asc' }, take: rowsMost });
  const sold = new Map<string, number>();
  for (const sale of sales) {
    const mark = saleMark(sale);
    sold.set(mark, (sold.get(mark) ?? 0) + 1);
  }
  return sold;
}
