import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { readShown, type ShownWhole } from './shown';

/** A bucket of glaze, and the commission it is kept for. */
export type BatchTold = {
  id: string;
  number: string;
  glaze: string;
  /** The glaze of the book, and the version of its recipe where that is known. */
  inBook: { id: string; name: string; version: number | null } | null;
  mixedOn: Day;
  weightG: number | null;
  note: string;
  keptFor: { number: number; title: string } | null;
};

/** The buckets of glaze, the newest first; at most three hundred. */
export async function listBatches(actor: Actor): Promise<BatchTold[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await db().glazeBatch.findMany({
    select: {
      ...{ id: true, number: true, glaze: true, mixedOn: true, weightG: true, note: true },
      inBook: { select: { id: true, name: true } },
      recipe: { select: { version: true } },
      reserved: {
        where: { releasedAt: null },
        select: { commission: { select: { number: true, title: true } } },
        take: 1,
      },
    },
    orderBy: [{ mixedOn: 'desc' }, { number: 'desc' }],
    take: 300,
  });
  return rows.map(({ reserved, mixedOn, inBook, recipe, ...row }) => ({
    ...row,
    inBook: inBook && { ...inBook, version: recipe?.version ?? null },
    mixedOn: dayFromDate(mixedOn),
    keptFor: reserved[0]?.commission ?? null,
  }));
}

/** Everything that was shown of a commission, for those who work here: see {@link readShown}. */
export async function listShownWhole(actor: Actor, commissionId: string): Promise<ShownWhole[]> {
  assertAllowed(actor, 'commissions.see');
  return readShown(db(), commissionId);
}
