import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { monthRange, type Month } from '@/lib/dates/rules';
import { sumCents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { kindsForLater } from '@/lib/ledger/rules/sale-entry';
import { otherKinds, sharesOf } from './rules';

/** A picture as pages show it. */
export type ReportPicture = { src: string; alt: string; width: number; height: number };

/** What one design did in a month. Money before tax, in cents; share in tenths of a per cent. */
export type DesignOfMonth = {
  code: string;
  title: string;
  units: number;
  netCents: bigint;
  shareTenths: number;
  picture: ReportPicture | null;
};

/** What stands beside the designs; its share is of everything sold before what came back. */
export type BesideDesigns = { units: number; netCents: bigint; shareTenths: number };

/** A month by design. The lines of sales are the only source; nothing is kept a second time. */
export type MonthByDesign = {
  month: Month;
  designs: DesignOfMonth[];
  /** What was handed over to collectors in the month; null when nothing was. */
  commissions: BesideDesigns | null;
  /** What has no design: delivery, work, things typed in; null when there was none. */
  other: BesideDesigns | null;
  /** What was brought back in the month, as sums below zero; null when nothing was. */
  broughtBack: { units: number; netCents: bigint } | null;
  /** Pieces sold less pieces brought back. */
  units: number;
  /** The sum of the lines above. */
  netCents: bigint;
  /** The same by another way: the sum of the sales themselves. */
  salesNetCents: bigint;
  sales: number;
};

const designRow = z.object({
  code: z.string(),
  title: z.string(),
  units: z.number(),
  netCents: z.bigint(),
  pictureId: z.string().nullable(),
  pictureWidth: z.number().nullable(),
  pictureHeight: z.number().nullable(),
});

/**
 * Units and net by design for a month, the largest first, and one line for the commissions that
 * were handed over. A sale belongs to the month of its day in the gallery's own time zone.
 */
export async function monthByDesign(actor: Actor, month: Month): Promise<MonthByDesign> {
  assertAllowed(actor, 'month.see');
  const [rows, totals] = await Promise.all([designRows(month), totalsOf(month)]);
  const { commissionUnits, commissionNetCents, otherUnits, otherNetCents } = totals;
  const nets = [...rows.map((row) => row.netCents), commissionNetCents, otherNetCents];
  const shares = sharesOf(nets);
  const shareAt = (at: number) => shares[at] ?? 0;
  const beside = (units: number, netCents: bigint, at: number): BesideDesigns | null =>
    units > 0 ? { units, netCents, shareTenths: shareAt(at) } : null;
  const designs = rows.map((row, at) => designFrom(row, shareAt(at)));
  const { backUnits, backNetCents } = totals;
  return {
    month,
    designs,
    commissions: beside(commissionUnits, commissionNetCents, rows.length),
    other: beside(otherUnits, otherNetCents, rows.length + 1),
    broughtBack:
      backNetCents > 0n || backUnits > 0 ? { units: -backUnits, netCents: -backNetCents } : null,
    units: designs.reduce((sum, each) => sum + each.units, commissionUnits) - backUnits,
    netCents: sumCents([...nets, -backNetCents]),
    salesNetCents: totals.salesNetCents,
    sales: totals.sales,
  };
}

async function designRows(month: Month) {
  const { fromOn, untilOn } = monthRange(month);
  const rows = await db().$queryRaw`
    SELECT design.code, design.title, sum(line.quantity)::int AS units,
      sum(line."netCents")::bigint AS "netCents", picture.id AS "pictureId",
      picture."widthPx" AS "pictureWidth", picture."heightPx" AS "pictureHeight"
    FROM "SaleLine" line
    JOIN "Sale" sale ON sale.id = line."saleId"
    LEFT JOIN "Sku" sku ON sku.id = line."skuId"
    JOIN "Design" design ON design.id = coalesce(line."designId", sku."designId")
    LEFT JOIN "StoredFile" picture ON picture.id = design."pictureId"
    WHERE sale."soldOn" >= ${fromOn}::date AND sale."soldOn" < ${untilOn}::date
      AND line.kind = 'piece'
    GROUP BY design.id, picture.id
    ORDER BY sum(line."netCents") DESC, design.title`;
  return z.array(designRow).parse(rows);
}

const totalsRow = z.object({
  commissionUnits: z.number(),
  commissionNetCents: z.bigint(),
  otherUnits: z.number(),
  otherNetCents: z.bigint(),
  backUnits: z.number(),
  backNetCents: z.bigint(),
  salesNetCents: z.bigint(),
  sales: z.number(),
});

/** Money for later (a voucher, a deposit, an instalment) is no sale yet, coming or going. */
async function totalsOf(month: Month) {
  const { fromOn, untilOn } = monthRange(month);
  const rows = await db().$queryRaw`
    WITH of_month AS (
      SELECT id, "netCents" FROM "Sale"
      WHERE "soldOn" >= ${fromOn}::date AND "soldOn" < ${untilOn}::date
    ), lines AS (
      SELECT line.kind::text AS kind, quantity, line."netCents" FROM "SaleLine" line
      JOIN of_month ON of_month.id = "saleId"
    ), back AS (
      SELECT CASE WHEN line.kind = 'piece' THEN came.quantity ELSE 0 END AS pieces,
        came."netCents", line.kind::text AS kind
      FROM "GoodsReturnLine" came
      JOIN "GoodsReturn" answer ON answer.id = came."returnId"
      JOIN "SaleLine" line ON line.id = came."saleLineId"
      WHERE answer."returnedOn" >= ${fromOn}::date AND answer."returnedOn" < ${untilOn}::date
    ), later AS (SELECT unnest(${[...kindsForLater]}::text[]) AS kind)
    SELECT
      (SELECT coalesce(sum(quantity), 0)::int FROM lines WHERE kind = 'commission')
        AS "commissionUnits",
      (SELECT coalesce(sum("netCents"), 0)::bigint FROM lines WHERE kind = 'commission')
        AS "commissionNetCents",
      (SELECT count(*)::int FROM lines WHERE kind = ANY(${otherKinds})) AS "otherUnits",
      (SELECT coalesce(sum("netCents"), 0)::bigint FROM lines WHERE kind = ANY(${otherKinds}))
        AS "otherNetCents",
      (SELECT coalesce(sum(pieces), 0)::int FROM back) AS "backUnits",
      (SELECT coalesce(sum("netCents"), 0)::bigint FROM back
        WHERE kind NOT IN (SELECT kind FROM later)) AS "backNetCents",
      (SELECT coalesce(sum("netCents"), 0)::bigint FROM of_month)
        - (SELECT coalesce(sum("netCents"), 0)::bigint FROM lines
            WHERE kind IN (SELECT kind FROM later))
        - (SELECT coalesce(sum("netCents"), 0)::bigint FROM back
            WHERE kind NOT IN (SELECT kind FROM later)) AS "salesNetCents",
      (SELECT count(*)::int FROM of_month) AS sales`;
  const [totals] = z.tuple([totalsRow]).parse(rows);
  return totals;
}

function designFrom(row: z.infer<typeof designRow>, shareTenths: number): DesignOfMonth {
  const { pictureId, pictureWidth, pictureHeight, ...design } = row;
  if (pictureId === null) return { ...design, shareTenths, picture: null };
  const size = { width: pictureWidth ?? pictureSidePx, height: pictureHeight ?? pictureSidePx };
  const picture = { src: `/files/${pictureId}`, alt: design.title, ...size };
  return { ...design, shareTenths, picture };
}

/** For a picture whose size nobody kept. */
const pictureSidePx = 900;
