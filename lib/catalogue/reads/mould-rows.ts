import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { dayFromDate } from '@/lib/dates/rules';
import { mouldFaces, mouldKinds, mouldStanding, type MouldStanding } from '../rules/moulds';

/** The most moulds, and the most editions, that the page shows. */
export const mouldsListed = 300;

const day = z.date().transform(dayFromDate);

const mouldRow = z.object({
  id: z.string(),
  code: z.string(),
  designId: z.string(),
  design: z.string(),
  kind: z.enum(mouldKinds),
  /** The code of what it was made from, and of the moulds that were made from it. */
  fromId: z.string().nullable(),
  from: z.string().nullable(),
  made: z.array(z.string()),
  slipMl: z.number().nullable(),
  face: z.enum(mouldFaces).nullable(),
  faceNote: z.string().nullable(),
  lookedOn: day.nullable(),
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

/** The working moulds that give a design, those with the most casts to promise first. */
export async function readMouldsOf(
  from: Prisma.TransactionClient,
  designId: string,
): Promise<MouldShown[]> {
  const working = Prisma.sql`WHERE mould."designId" = ${designId}::uuid AND mould.kind = 'working'`;
  const moulds = await readMoulds(from, working);
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
      mould.kind::text AS kind, mould."fromId", source.code AS "from", mould."slipMl",
      ARRAY(SELECT code FROM "Mould" WHERE "fromId" = mould.id ORDER BY code) AS made,
      look.face::text AS face, look.note AS "faceNote", look."lookedOn",
      poured.casts AS "castsSince", poured."lastCastOn",
      ARRAY(SELECT sku.code FROM "Edition" edition JOIN "Sku" sku ON sku.id = edition."skuId"
        WHERE edition."mouldId" = mould.id ORDER BY sku.code) AS editions
    FROM "Mould" mould
    JOIN "Design" design ON design.id = mould."designId"
    LEFT JOIN "Mould" source ON source.id = mould."fromId"
    LEFT JOIN LATERAL (
      SELECT face, note, "lookedOn" FROM "MouldLook" WHERE "mouldId" = mould.id
      ORDER BY "lookedOn" DESC, at DESC, id DESC LIMIT 1
    ) look ON true
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
