import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addressLine, type Reach } from '@/lib/collectors/rules';
import { dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { sitsTooLong } from './rules/owed';

const galleriesMost = 200;
/** How many pieces with another gallery its sheet shows. */
export const withThemMost = 300;

/** Another gallery in the list of them. */
export type GalleryListed = {
  consigneeId: string;
  name: string;
  city: string | null;
  sharePercent: string;
  endedOn: Day | null;
  pieces: number;
  /** What is with them, at the retail prices of today. */
  retailCents: Cents;
  owedCents: Cents;
  /** Of that, what is past its day. */
  lateCents: Cents;
};

const listedRow = z.object({
  consigneeId: z.string(),
  name: z.string(),
  city: z.string().nullable(),
  sharePercent: z.string(),
  endedOn: z.date().nullable(),
  pieces: z.number(),
  retailCents: z.bigint(),
  owedCents: z.bigint(),
  lateCents: z.bigint(),
});

/** The other galleries, those that go on first, by name; at most 200. */
export async function listGalleries(actor: Actor, at: Date): Promise<GalleryListed[]> {
  assertAllowed(actor, 'outside.keep');
  const { timeZone } = await getGallery();
  const today = dayOf(at, timeZone);
  const rows = await db().$queryRaw`
    WITH owed AS (
      SELECT report."consigneeId", report."dueOn",
        report."dueCents" - coalesce((SELECT sum(payment."amountCents")
          FROM "SettlementPayment" payment WHERE payment."saleId" = report."saleId"), 0)
        - coalesce((SELECT sum(refund."amountCents") FROM "Refund" refund
          JOIN "Tender" tender ON tender.id = refund."tenderId"
          WHERE tender."saleId" = report."saleId" AND refund.kind = 'on_account'), 0) AS cents
      FROM "ConsignmentReport" report
    )
    SELECT consignee.id AS "consigneeId", collector.name, collector.city,
      trim_scale(consignee."sharePercent")::text AS "sharePercent", consignee."endedOn",
      coalesce((SELECT sum(level."onHand") FROM "StockLevel" level
        WHERE level."placeId" = consignee."placeId"), 0)::int AS pieces,
      coalesce((SELECT sum(level."onHand" * price_on(level."skuId", ${today}::date))
        FROM "StockLevel" level WHERE level."placeId" = consignee."placeId"
          AND level."onHand" > 0), 0)::bigint AS "retailCents",
      coalesce((SELECT sum(cents) FROM owed WHERE owed."consigneeId" = consignee.id), 0)::bigint
        AS "owedCents",
      coalesce((SELECT sum(cents) FROM owed WHERE owed."consigneeId" = consignee.id
        AND owed."dueOn" < ${today}::date), 0)::bigint AS "lateCents"
    FROM "Consignee" consignee JOIN "Collector" collector ON collector.id = consignee."collectorId"
    ORDER BY consignee."endedOn" IS NOT NULL, collector.name, consignee.id LIMIT ${galleriesMost}`;
  return z
    .array(listedRow)
    .parse(rows)
    .map((row) => ({ ...row, endedOn: row.endedOn && dayFromDate(row.endedOn) }));
}

/** Another gallery, with what was agreed. */
export type GalleryTerms = {
  consigneeId: string;
  collectorId: string;
  name: string;
  reach: Reach;
  address: string | null;
  placeId: string;
  sharePercent: string;
  payDays: number;
  terms: string;
  sinceOn: Day;
  endedOn: Day | null;
};

/**
 * Another gallery by its id.
 *
 * @returns null when none has it
 */
export async function findGalleryTerms(actor: Actor, id: string): Promise<GalleryTerms | null> {
  assertAllowed(actor, 'outside.keep');
  if (!z.uuid().safeParse(id).success) return null;
  const row = await db().consignee.findUnique({
    where: { id },
    select: {
      ...{ id: true, placeId: true, sharePercent: true, payDays: true, terms: true },
      ...{ sinceOn: true, endedOn: true },
      collector: {
        select: {
          ...{ id: true, name: true, email: true, phone: true },
          ...{ street: true, city: true, state: true, postcode: true },
        },
      },
    },
  });
  if (!row) return null;
  const { id: collectorId, name, ...reach } = row.collector;
  const { placeId, payDays, terms } = row;
  return {
    ...{ consigneeId: row.id, collectorId, name, reach, address: addressLine(reach) },
    ...{ placeId, payDays, terms, sharePercent: row.sharePercent.toString() },
    sinceOn: dayFromDate(row.sinceOn),
    endedOn: row.endedOn && dayFromDate(row.endedOn),
  };
}

/** A piece that is with another gallery. */
export type PieceWithThem = {
  skuId: string;
  sku: string;
  title: string;
  what: string;
  quantity: number;
  numbers: number[];
  /** Of the newest note that took it there; of today where no note did. */
  retailCents: Cents;
  /** The day on which the oldest of those that are there came. */
  sinceOn: Day;
  sitsTooLong: boolean;
};

const withThemRow = z.object({
  skuId: z.string(),
  sku: z.string(),
  title: z.string(),
  what: z.string(),
  quantity: z.number(),
  numbers: z.array(z.number()),
  retailCents: z.bigint(),
  since: z.date().nullable(),
});

/** What is with another gallery, what has been there longest first; at most 300 SKUs. */
export async function listWithThem(
  actor: Actor,
  gallery: Pick<GalleryTerms, 'consigneeId' | 'placeId'>,
  at: Date,
): Promise<PieceWithThem[]> {
  assertAllowed(actor, 'outside.keep');
  const { timeZone } = await getGallery();
  const today = dayOf(at, timeZone);
  const rows = await db().$queryRaw`
    WITH came AS (
      SELECT movement."skuId", movement.at,
        sum(movement.quantity) OVER (PARTITION BY movement."skuId" ORDER BY movement.id DESC)
          - movement.quantity AS later
      FROM "StockMovement" movement
      WHERE movement."placeId" = ${gallery.placeId}::uuid AND movement.quantity > 0
    )
    SELECT sku.id AS "skuId", sku.code AS sku, design.title, colourway.name AS what,
      level."onHand" AS quantity,
      coalesce((SELECT array_agg(piece.number ORDER BY piece.number) FROM "EditionPiece" piece
        WHERE piece."skuId" = sku.id AND piece."placeId" = level."placeId"), '{}') AS numbers,
      coalesce((SELECT line."retailCents" FROM "ConsignmentNoteLine" line
        JOIN "ConsignmentNote" note ON note.id = line."noteId"
        WHERE note."consigneeId" = ${gallery.consigneeId}::uuid AND NOT note."isBack"
          AND line."skuId" = sku.id ORDER BY note.number DESC, line.position DESC LIMIT 1),
        price_on(sku.id, ${today}::date)) AS "retailCents",
      (SELECT min(came.at) FROM came WHERE came."skuId" = sku.id AND came.later < level."onHand")
        AS since
    FROM "StockLevel" level
    JOIN "Sku" sku ON sku.id = level."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    WHERE level."placeId" = ${gallery.placeId}::uuid AND level."onHand" > 0
    ORDER BY since, design.title, sku.code LIMIT ${withThemMost}`;
  return z
    .array(withThemRow)
    .parse(rows)
    .map(({ since, ...piece }) => {
      const sinceOn = since ? dayOf(since, timeZone) : today;
      return { ...piece, sinceOn, sitsTooLong: sitsTooLong(sinceOn, today) };
    });
}
