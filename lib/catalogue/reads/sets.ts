import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';

/** The most sets that the list shows. */
export const setsListed = 200;

const memberRow = z.object({
  skuId: z.string(),
  code: z.string(),
  title: z.string(),
  colourway: z.string(),
  quantity: z.number(),
  /** The price of one on the day, in cents. */
  priceCents: z.string().transform(BigInt),
  /** On hand at the counter's place, and not held. */
  free: z.number(),
});

const setRow = z.object({
  setId: z.string(),
  code: z.string(),
  title: z.string(),
  priceCents: z.bigint().nullable(),
  maySplit: z.enum(['may_be_split', 'never_split', 'split_at_single_price']),
  note: z.string(),
  members: z.array(memberRow),
});

/** A set as pages show it. Cents. */
export type SetShown = z.output<typeof setRow> & {
  /** What its pieces cost one by one. */
  singleCents: bigint;
  /** How many whole sets are at the counter's place. */
  whole: number;
};

/** The sets that are offered, by title. */
export async function listSets(actor: Actor, todayOn: Day): Promise<SetShown[]> {
  assertAllowed(actor, 'stock.see');
  return readSets(todayOn, Prisma.empty);
}

/** One set by its code; null when there is none, or when it has ended. */
export async function findSet(actor: Actor, code: string, todayOn: Day): Promise<SetShown | null> {
  assertAllowed(actor, 'stock.see');
  const named = Prisma.sql`AND whole.code = ${code.trim().toUpperCase()}`;
  return (await readSets(todayOn, named))[0] ?? null;
}

async function readSets(todayOn: Day, which: Prisma.Sql): Promise<SetShown[]> {
  const rows = await db().$queryRaw`
    SELECT whole.id AS "setId", whole.code, whole.title, whole."priceCents",
      whole."maySplit"::text AS "maySplit", whole.note, parts.members
    FROM "PieceSet" whole
    CROSS JOIN LATERAL (
      SELECT json_agg(json_build_object(
        'skuId', sku.id, 'code', sku.code, 'title', design.title, 'colourway', colourway.name,
        'quantity', member.quantity, 'priceCents', price_on(sku.id, ${todayOn}::date)::text,
        'free', coalesce(level."onHand" - level.held, 0)) ORDER BY sku.code) AS members
      FROM "PieceSetMember" member
      JOIN "Sku" sku ON sku.id = member."skuId"
      JOIN "Design" design ON design.id = sku."designId"
      JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
      LEFT JOIN "StockLevel" level ON level."skuId" = sku.id
        AND level."placeId" = (SELECT "counterId" FROM "Gallery")
      WHERE member."setId" = whole.id
    ) parts
    WHERE whole."endedAt" IS NULL ${which}
    ORDER BY whole.title, whole.code LIMIT ${setsListed}`;
  return z.array(setRow).parse(rows).map(shown);
}

function shown(row: z.output<typeof setRow>): SetShown {
  const wholes = row.members.map((each) => Math.floor(each.free / each.quantity));
  return {
    ...row,
    singleCents: row.members.reduce(
      (sum, each) => sum + each.priceCents * BigInt(each.quantity),
      0n,
    ),
    whole: Math.max(0, Math.min(...wholes)),
  };
}
