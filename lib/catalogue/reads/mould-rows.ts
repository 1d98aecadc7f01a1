import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { dayFromDate } from '@/lib/dates/rules';
import { mouldStanding, type MouldStanding } from '../rules/moulds';

/** The most moulds, and the most editions, that the page shows. */
export const mouldsListed = 300;

const day = z.date().transform(dayFromDate);

const mouldRow = z.object({
  id: z.string(),
  code: z.string(),
  designId: z.string(),
  design: z.string(),
  lifeCasts: z.number(),
  begunWith: z.number(),
  castsSince: z.number(),
  madeOn: day,
  retiredOn: day.nullable(),
  note: z.string(),
  lastCastOn: day.nullable(),
  editions: z.array(z.string()),
});

/** A mould as the list shows it; `editions` are the SKUs of those that come from it. */
export type MouldShown = z.output<typeof mouldRow> & MouldStanding;

/** The moulds that give a design, those in use with the most casts left first. */
export async function readMouldsOf(
  from: Prisma.TransactionClient,
  designId: string,
): Promise<MouldShown[]> {
  const moulds = await readMoulds(from, Prisma.sql`WHERE mould."designId" = ${designId}::uuid`);
  return moulds.toSorted((one, other) => other.left - one.left);
}

/** Moulds as they are counted, those in use first, by design. */
export async function readMoulds(
  from: Prisma.TransactionClient,
  which: Prisma.Sql,
): Promise<MouldShown[]> {
  const rows = await from.$queryRaw`
    SELECT mould.id, mould.code, mould."designId", design.title AS design, mould."lifeCasts",
      mould."begunWith", mould."madeOn", mould."retiredOn", mould.note,
      poured.casts AS "castsSince", poured."lastCastOn",
      ARRAY(SELECT sku.code FROM "Edition" edition JOIN "Sku" sku ON sku.id = edition."skuId"
        WHERE edition."mouldId" = mould.id ORDER BY sku.code) AS editions
    FROM "Mould" mould
    JOIN "Design" design ON design.id = mould."designId"
    CROSS JOIN LATERAL (
      SELECT coalesce(sum(casts), 0)::int AS casts, max("on") AS "lastCastOn"
      FROM "MouldCast" WHERE "mouldId" = mould.id
    ) poured
    ${which}
    ORDER BY mould."retiredOn" IS NOT NULL, design.title, mould.code LIMIT ${mouldsListed}`;
  return z
    .array(mouldRow)
    .parse(rows)
    .map((row) => ({ ...row, ...mouldStanding(row) }));
}
