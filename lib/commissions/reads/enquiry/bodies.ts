import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';

/** A clay body with what is known of it; decimals as text, null is "not known yet". */
export type ClayBodyKept = {
  id: string;
  name: string;
  absorptionPercent: string | null;
  shrinkagePercent: string | null;
  densityGPerCm3: string | null;
  frostTested: boolean | null;
  /** What a kilogram costs, in decimal cents. */
  centsPerKg: string | null;
  note: string;
};

/** Every clay body that is written down, by name. */
export async function listBodies(actor: Actor): Promise<ClayBodyKept[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await db().clayBody.findMany({ orderBy: { name: 'asc' } });
  return rows.map(({ id, name, frostTested, note, ...measured }) => ({
    ...{ id, name, frostTested, note },
    absorptionPercent: measured.absorptionPercent?.toString() ?? null,
    shrinkagePercent: measured.shrinkagePercent?.toString() ?? null,
    densityGPerCm3: measured.densityGPerCm3?.toString() ?? null,
    centsPerKg: measured.centsPerKg?.toString() ?? null,
  }));
}
