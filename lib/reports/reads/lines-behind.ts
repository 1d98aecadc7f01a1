import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { monthRange, type Day, type Month } from '@/lib/dates/rules';
import { sumCents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { kindsForLater } from '@/lib/ledger/rules/sale-entry';
import { otherKinds } from '../rules';

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

/** The figures that stand beside the designs. */
export type Beside = 'commissions' | 'other' | 'back';

const besideTitles: Readonly<Record<Beside, string>> = {
  commissions: 'Commissions handed over',
  other: 'Delivery, work and things typed in',
  back: 'Brought back',
};

/**
 * The lines behind a figure of the month: a design's, or one that stands beside the designs.
 * What was brought back counts below zero.
 *
 * @returns null when there is no such design
 */
export async function linesBehind(
  actor: Actor,
  month: Month,
  figure: { design: string } | { beside: Beside },
): Promise<LinesBehind | null> {
  assertAllowed(actor, 'month.see');
  const behind = 'beside' in figure ? await besideLines(month, figure.beside) : null;
  const found = 'design' in figure ? await designLines(month, figure.design) : behind;
  if (!found) return null;
  const { title, lines } = found;
  return {
    title,
    lines,
    units: lines.reduce((sum, line) => sum + line.quantity, 0),
    netCents: sumCents(lines.map((line) => line.netCents)),
  };
}

type Found = { title: string; lines: LineOfMonth[] };

async function besideLines(month: Month, beside: Beside): Promise<Found> {
  const title = besideTitles[beside];
  if (beside === 'back') return { title, lines: await backRows(month) };
  const kinds = beside === 'commissions' ? ['commission'] : otherKinds;
  const of = Prisma.sql`line.kind::text = ANY(${kinds})`;
  return { title, lines: await lineRows(month, of) };
}

async function designLines(month: Month, code: string): Promise<Found | null> {
  const select = { id: true, title: true };
  const design = await db().design.findUnique({ where: { code: code.toUpperCase() }, select });
  if (!design) return null;
  const of = Prisma.sql`line.kind = 'piece'
    AND coalesce(line."designId", sku."designId") = ${design.id}::uuid`;
  return { title: design.title, lines: await lineRows(month, of) };
}

async function lineRows(month: Month, of: Prisma.Sql): Promise<LineOfMonth[]> {
  const { fromOn, untilOn } = monthRange(month);
  const rows = await db().$queryRaw`
    SELECT line.id, sale.number AS receipt, to_char(sale."soldOn", 'YYYY-MM-DD') AS "soldOn",
      line.what, line.title, line.quantity, line."netCents"
    FROM "SaleLine" line
    JOIN "Sale" sale ON sale.id = line."saleId"
    LEFT JOIN "Sku" sku ON sku.id = line."skuId"
    WHERE sale."soldOn" >= ${fromOn}::date AND sale."soldOn" < ${untilOn}::date AND ${of}
    ORDER BY sale."soldOn", sale.number, line.position LIMIT ${linesMost}`;
  return z.array(lineRow).parse(rows);
}

async function backRows(month: Month): Promise<LineOfMonth[]> {
  const { fromOn, untilOn } = monthRange(month);
  const rows = await db().$queryRaw`
    SELECT came.id, sale.number AS receipt, to_char(answer."returnedOn", 'YYYY-MM-DD') AS "soldOn",
      line.what, line.title, -came.quantity AS quantity, -came."netCents" AS "netCents"
    FROM "GoodsReturnLine" came
    JOIN "GoodsReturn" answer ON answer.id = came."returnId"
    JOIN "SaleLine" line ON line.id = came."saleLineId"
    JOIN "Sale" sale ON sale.id = line."saleId"
    WHERE answer."returnedOn" >= ${fromOn}::date AND answer."returnedOn" < ${untilOn}::date
      AND line.kind::text <> ALL(${[...kindsForLater]})
    ORDER BY answer."returnedOn", answer.number, line.position LIMIT ${linesMost}`;
  return z.array(lineRow).parse(rows);
}
