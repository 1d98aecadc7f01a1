import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { hashDifferences, readDifferences, type DifferenceSeen } from './differences';
import { namesOf } from './papers';

/** How many counts the list shows, and how many counted SKUs one page of a count. */
const countsListed = 40;
/** See {@link findCount}: the counted SKUs on one page of it. */
export const countedAPage = 60;

/** Where a count is. */
export type CountState = 'open' | 'booked' | 'left';

/** A count in the list of counts. */
export type CountListed = {
  number: number;
  placeId: string;
  place: string;
  partOnly: boolean;
  state: CountState;
  startedBy: string;
  startedAt: Date;
  bookedAt: Date | null;
  leftAt: Date | null;
  /** SKUs and pieces that were counted. */
  skus: number;
  pieces: number;
};

/** The latest counts, those still open first; at most 40. */
export async function listCounts(actor: Actor): Promise<CountListed[]> {
  assertAllowed(actor, 'stock.move');
  const open = { bookedAt: null, leftAt: null };
  const select = { number: true } as const;
  const orderBy = { number: 'desc' } as const;
  const [waiting, over] = await Promise.all([
    db().stockCount.findMany({ where: open, select, orderBy, take: countsListed }),
    db().stockCount.findMany({ where: { NOT: open }, select, orderBy, take: countsListed }),
  ]);
  const numbers = [...waiting, ...over].map((each) => each.number).slice(0, countsListed);
  return readListed(numbers);
}

async function readListed(numbers: readonly number[]): Promise<CountListed[]> {
  const rows = await db().stockCount.findMany({
    where: { number: { in: [...numbers] } },
    select: {
      ...{ number: true, placeId: true, partOnly: true, startedById: true, startedAt: true },
      ...{ bookedAt: true, leftAt: true, id: true },
      place: { select: { name: true } },
    },
    orderBy: { number: 'desc' },
    take: countsListed,
  });
  const names = await namesOf(rows.map((row) => row.startedById));
  const sums = await db().stockCountLine.groupBy({
    by: ['countId'],
    where: { countId: { in: rows.map((row) => row.id) }, counted: { gt: 0 } },
    _count: true,
    _sum: { counted: true },
  });
  const sumOf = new Map(sums.map((sum) => [sum.countId, sum]));
  const listed = rows.map(({ id, place, startedById, ...row }) => ({
    ...row,
    place: place.name,
    startedBy: names.get(startedById) ?? '',
    state: stateOf(row),
    skus: sumOf.get(id)?._count ?? 0,
    pieces: sumOf.get(id)?._sum.counted ?? 0,
  }));
  return listed.toSorted(
    (one, other) => numbers.indexOf(one.number) - numbers.indexOf(other.number),
  );
}

function stateOf(row: { bookedAt: Date | null; leftAt: Date | null }): CountState {
  if (row.bookedAt) return 'booked';
  return row.leftAt ? 'left' : 'open';
}

/** A SKU as it was counted so far. */
export type CountedLine = {
  skuId: string;
  sku: string;
  title: string;
  what: string;
  counted: number;
  numbers: number[];
  isNumbered: boolean;
  /** What the books said when it was booked, and why they differed. */
  expected: number | null;
  why: string;
};

const lineRow = z.object({
  skuId: z.string(),
  sku: z.string(),
  title: z.string(),
  what: z.string(),
  counted: z.number(),
  numbers: z.array(z.number()),
  isNumbered: z.boolean(),
  expected: z.number().nullable(),
  why: z.string(),
});

/** A count with what was counted, and for an open one how that differs from the books now. */
export type CountSheet = CountListed & {
  id: string;
  lines: CountedLine[];
  page: number;
  pages: number;
  differences: DifferenceSeen[];
  shownSha256: string;
};

/**
 * A count by its number.
 *
 * @param page of the SKUs that were counted, from 1
 * @returns null when no count has that number
 */
export async function findCount(
  actor: Actor,
  number: number,
  page: number,
): Promise<CountSheet | null> {
  assertAllowed(actor, 'stock.move');
  const [listed] = await readListed([number]);
  const row = await db().stockCount.findUnique({ where: { number }, select: { id: true } });
  if (!listed || !row) return null;
  const inAll = await db().stockCountLine.count({ where: { countId: row.id } });
  const pages = Math.max(1, Math.ceil(inAll / countedAPage));
  const shown = Math.min(page, pages);
  const { placeId, partOnly, startedAt } = listed;
  const differences =
    listed.state === 'open'
      ? await readDifferences(db(), { id: row.id, placeId, partOnly, startedAt })
      : [];
  return {
    ...{ ...listed, id: row.id, page: shown, pages, differences },
    lines: await linesOf(row.id, shown),
    shownSha256: hashDifferences(differences),
  };
}

async function linesOf(countId: string, page: number): Promise<CountedLine[]> {
  const rows = await db().$queryRaw`
    SELECT sku.id AS "skuId", sku.code AS sku, design.title, colourway.name AS what, line.counted,
      line.numbers, edition."skuId" IS NOT NULL AS "isNumbered", line.expected, line.why
    FROM "StockCountLine" line
    JOIN "Sku" sku ON sku.id = line."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    LEFT JOIN "Edition" edition ON edition."skuId" = sku.id
    WHERE line."countId" = ${countId}::uuid
    ORDER BY design.title, sku.code LIMIT ${countedAPage} OFFSET ${(page - 1) * countedAPage}`;
  return z.array(lineRow).parse(rows);
}
