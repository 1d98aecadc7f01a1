import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { assembliesOf, type AssemblyTold } from './newest';

/** Pieces that were set, and by whom it was noted. */
export type AssemblyShown = Omit<AssemblyTold, 'staffId'> & { by: string };

/** A hanging that begins while the adhesive still cures. */
export type TooSoon = { id: string; startsAt: Date };

/** When the pieces of a commission were set, newest first, and the hangings that come too soon. */
export async function listAssemblies(
  actor: Actor,
  commissionId: string,
): Promise<{ assemblies: AssemblyShown[]; tooSoon: TooSoon[] }> {
  assertAllowed(actor, 'commissions.see');
  const rows = await assembliesOf(commissionId);
  const staff = await db().staff.findMany({
    where: { id: { in: rows.map(({ staffId }) => staffId) } },
    select: { id: true, name: true },
  });
  const names = new Map(staff.map(({ id, name }) => [id, name]));
  const [newest] = rows;
  return {
    assemblies: rows.map(({ staffId, ...row }) => ({ ...row, by: names.get(staffId) ?? '' })),
    tooSoon: newest ? await hangingsBefore(commissionId, newest) : [],
  };
}

async function hangingsBefore(commissionId: string, newest: AssemblyTold): Promise<TooSoon[]> {
  return db().appointment.findMany({
    where: {
      ...{ commissionId, kind: 'hanging', calledOffAt: null },
      startsAt: { gte: newest.finishedAt, lt: newest.curesAt },
    },
    select: { id: true, startsAt: true },
    orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
    take: 5,
  });
}
