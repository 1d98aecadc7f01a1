import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { readMoulds, type MouldShown } from './mould-rows';

/** All moulds, those in use first, by design. */
export async function listMoulds(actor: Actor): Promise<MouldShown[]> {
  assertAllowed(actor, 'stock.see');
  return readMoulds(db(), Prisma.empty);
}

/** One mould by its code, in any case of letters; null when there is none. */
export async function findMould(actor: Actor, code: string): Promise<MouldShown | null> {
  assertAllowed(actor, 'stock.see');
  const named = Prisma.sql`WHERE mould.code = ${code.trim().toUpperCase()}`;
  return (await readMoulds(db(), named))[0] ?? null;
}

/** Casts that were poured or pressed from a mould, the newest first. */
export async function listCasts(actor: Actor, mouldId: string) {
  assertAllowed(actor, 'stock.see');
  const rows = await db().mouldCast.findMany({
    where: { mouldId },
    select: {
      ...{ id: true, casts: true, on: true, staffId: true },
      job: { select: { number: true } },
    },
    orderBy: [{ on: 'desc' }, { id: 'desc' }],
    take: 60,
  });
  return rows.map((row) => ({
    ...{ key: row.id.toString(), casts: row.casts, on: dayFromDate(row.on) },
    jobNumber: row.job?.number ?? null,
  }));
}
