import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { mouldFaces, mouldKinds, mouldStanding, mouldWarning } from '../rules/moulds';
import { mouldsListed } from './mould-rows';

const editionRow = z.object({
  skuId: z.string(),
  code: z.string(),
  title: z.string(),
  size: z.number(),
  artistProofs: z.number(),
  statedOn: z.date().transform(dayFromDate),
  came: z.number(),
  standing: z.number(),
  mould: z.string().nullable(),
  kind: z.enum(mouldKinds).nullable(),
  face: z.enum(mouldFaces).nullable(),
  lifeCasts: z.number().nullable(),
  begunWith: z.number().nullable(),
  castsSince: z.number(),
  retiredOn: z.date().transform(dayFromDate).nullable(),
});

/** An edition as the list shows it: how many have come, how many stand somewhere of ours. */
export type EditionShown = Pick<
  z.output<typeof editionRow>,
  'skuId' | 'code' | 'title' | 'size' | 'artistProofs' | 'statedOn' | 'came' | 'standing' | 'mould'
> & {
  /** Casts that may still be promised of its mould; null when no mould is known. */
  castsLeft: number | null;
  /** What is to be said of its mould; empty while nothing is. */
  mouldSaid: string;
};

/** The editions that were stated, by title. */
export async function listEditions(actor: Actor): Promise<EditionShown[]> {
  assertAllowed(actor, 'stock.see');
  return readEditionsShown(Prisma.empty);
}

async function readEditionsShown(which: Prisma.Sql): Promise<EditionShown[]> {
  const rows = await db().$queryRaw`
    SELECT edition."skuId", sku.code, design.title, edition.size, edition."artistProofs",
      edition."statedOn", mould.code AS mould, mould."lifeCasts", mould."begunWith",
      mould."retiredOn", mould.kind::text AS kind, pieces.came, pieces.standing,
      (SELECT coalesce(sum(casts), 0)::int FROM "MouldCast" WHERE "mouldId" = mould.id)
        AS "castsSince",
      (SELECT face::text FROM "MouldLook" WHERE "mouldId" = mould.id
        ORDER BY "lookedOn" DESC, at DESC, id DESC LIMIT 1) AS face
    FROM "Edition" edition
    JOIN "Sku" sku ON sku.id = edition."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    LEFT JOIN "Mould" mould ON mould.id = edition."mouldId"
    CROSS JOIN LATERAL (
      SELECT count(*)::int AS came, count("placeId")::int AS standing
      FROM "EditionPiece" WHERE "skuId" = edition."skuId"
    ) pieces
    ${which}
    ORDER BY design.title, sku.code LIMIT ${mouldsListed}`;
  return z.array(editionRow).parse(rows).map(shown);
}

function shown(row: z.output<typeof editionRow>): EditionShown {
  const { lifeCasts, begunWith, castsSince, retiredOn, kind, face, ...edition } = row;
  if (lifeCasts === null || begunWith === null || kind === null) {
    return { ...edition, castsLeft: null, mouldSaid: '' };
  }
  const standing = mouldStanding({ kind, face, lifeCasts, begunWith, castsSince, retiredOn });
  return { ...edition, castsLeft: standing.left, mouldSaid: mouldWarning(standing) };
}

const numberRow = z.object({
  number: z.number(),
  place: z.string().nullable(),
  reason: z.enum([
    ...(['opening', 'made', 'sold', 'returned', 'moved', 'second'] as const),
    ...(['counted', 'broken', 'missing'] as const),
  ]),
});

/** An edition with where each of its numbers is. */
export type EditionSheet = EditionShown & {
  /** By place, the numbers that stand there, ascending. */
  places: readonly { place: string; numbers: readonly number[] }[];
  sold: readonly number[];
  /** Broken, missing, or marked as a second: their numbers stay empty. */
  gone: readonly number[];
  /** Numbers that have not come yet, proofs among them. */
  toCome: number;
};

/** Where every number of a piece's edition is; null for what is no stated edition. */
export async function findEdition(actor: Actor, skuId: string): Promise<EditionSheet | null> {
  assertAllowed(actor, 'stock.see');
  const [edition] = await readEditionsShown(Prisma.sql`WHERE edition."skuId" = ${skuId}::uuid`);
  if (!edition) return null;
  const rows = await db().$queryRaw`
    SELECT piece.number, place.name AS place, last.reason::text AS reason
    FROM "EditionPiece" piece
    LEFT JOIN "Place" place ON place.id = piece."placeId"
    CROSS JOIN LATERAL (
      SELECT reason FROM "StockMovement"
      WHERE "skuId" = piece."skuId" AND "editionNumber" = piece.number
      ORDER BY id DESC LIMIT 1
    ) last
    WHERE piece."skuId" = ${skuId}::uuid ORDER BY piece.number`;
  const numbers = z.array(numberRow).parse(rows);
  const away = numbers.filter((each) => each.place === null);
  const of = (is: boolean) =>
    away.filter((each) => (each.reason === 'sold') === is).map((each) => each.number);
  return {
    ...edition,
    places: byPlace(numbers),
    sold: of(true),
    gone: of(false),
    toCome: edition.size + edition.artistProofs - edition.came,
  };
}

function byPlace(numbers: readonly z.infer<typeof numberRow>[]) {
  const places = new Map<string, number[]>();
  for (const { place, number } of numbers) {
    if (place !== null) places.set(place, [...(places.get(place) ?? []), number]);
  }
  return [...places].map(([place, here]) => ({ place, numbers: here }));
}
