import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { monthRange, type Day, type Month } from '@/lib/dates/rules';
import { sumCents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { sharesOf } from './rules';

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

/** A month by design. The lines of sales are the only source; nothing is kept a second time. */
export type MonthByDesign = {
  month: Month;
  designs: DesignOfMonth[];
  /** What was handed over to collectors in the month; null when nothing was. */
  commissions: { units: number; netCents: bigint; shareTenths: number } | null;
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
  const [rows, others] = await Promise.all([designRows(month), totalsOf(month)]);
  const handedOver = others.commissionUnits > 0 ? [others.commissionNetCents] : [];
  const shares = sharesOf([...rows.map((row) => row.netCents), ...handedOver]);
  const designs = rows.map((row, at) => designFrom(row, shares[at] ?? 0));
  const commissions =
    others.commissionUnits > 0
      ? {
          units: others.commissionUnits,
          netCents: others.commissionNetCents,
          shareTenths: shares[rows.length] ?? 0,
        }
      : null;
  return {
    month,
    designs,
    commissions,
    units: designs.reduce((sum, each) => sum + each.units, commissions?.units ?? 0),
    netCents: sumCents([...designs.map((each) => each.netCents), ...handedOver]),
    salesNetCents: others.salesNetCents,
    sales: others.sales,
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
  salesNetCents: z.bigint(),
  sales: z.number(),
});

async function totalsOf(month: Month) {
  const { fromOn, untilOn } = monthRange(month);
  const rows = await db().$queryRaw`
    WITH of_month AS (
      SELECT id, "netCents" FROM "Sale"
      WHERE "soldOn" >= ${fromOn}::date AND "soldOn" < ${untilOn}::date
    ), handed_over AS (
      SELECT quantity, line."netCents" FROM "SaleLine" line JOIN of_month ON of_month.id = "saleId"
      WHERE kind = 'commission'
    )
    SELECT (SELECT coalesce(sum(quantity), 0)::int FROM handed_over) AS "commissionUnits",
      (SELECT coalesce(sum("netCents"), 0)::bigint FROM handed_over) AS "commissionNetCents",
      (SELECT coalesce(sum("netCents"), 0)::bigint FROM of_month) AS "salesNetCents",
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

/** One line of a slip behind a figure of the month. */
export type LineOfMonth = {
  id: string;
  receipt: number;
  soldOn: Day;
  what: string;
  title: string;
  quantity: number;
  netCents: bigint;
};

const lineRow = z.object({
  id: z.string(),
  receipt: z.number(),
  soldOn: z.string().transform((text) => text as Day),
  what: z.string(),
  title: z.string(),
  quantity: z.number(),
  netCents: z.bigint(),
});

/** The most lines that one figure opens to on a page. */
export const linesMost = 2_000;

/** The lines behind one figure of the month, oldest first. */
export type LinesBehind = { title: string; lines: LineOfMonth[]; units: number; netCents: bigint };

/**
 * The sale lines behind a design's figure, or behind that of the commissions handed over.
 *
 * @param designCode the design's code; null for the commissions
 * @returns null when there is no such design
 */
export async function linesBehind(
  actor: Actor,
  month: Month,
  designCode: string | null,
): Promise<LinesBehind | null> {
  assertAllowed(actor, 'month.see');
  const design = designCode === null ? null : await designOf(designCode);
  if (designCode !== null && !design) return null;
  const lines = await lineRows(month, design?.id ?? null);
  return {
    title: design?.title ?? 'Commissions handed over',
    lines,
    units: lines.reduce((sum, line) => sum + line.quantity, 0),
    netCents: sumCents(lines.map((line) => line.netCents)),
  };
}

async function designOf(code: string) {
  const select = { id: true, title: true };
  return db().design.findUnique({ where: { code: code.toUpperCase() }, select });
}

async function lineRows(month: Month, designId: string | null): Promise<LineOfMonth[]> {
  const { fromOn, untilOn } = monthRange(month);
  const rows = await db().$queryRaw`
    SELECT line.id, sale.number AS receipt, to_char(sale."soldOn", 'YYYY-MM-DD') AS "soldOn",
      line.what, line.title, line.quantity, line."netCents"
    FROM "SaleLine" line
    JOIN "Sale" sale ON sale.id = line."saleId"
    LEFT JOIN "Sku" sku ON sku.id = line."skuId"
    WHERE sale."soldOn" >= ${fromOn}::date AND sale."soldOn" < ${untilOn}::date
      AND CASE WHEN ${designId}::uuid IS NULL THEN line.kind = 'commission'
        ELSE line.kind = 'piece'
          AND coalesce(line."designId", sku."designId") = ${designId}::uuid END
    ORDER BY sale."soldOn", sale.number, line.position LIMIT ${linesMost}`;
  return z.array(lineRow).parse(rows);
}
