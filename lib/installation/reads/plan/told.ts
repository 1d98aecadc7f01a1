import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { planTold, type PlanTold } from '@/lib/installation/rules/plan/told';
import { db } from '@/lib/platform/db/client';
import type { LengthSystem } from '@/lib/units/rules';
import { loadPlan, type PlanKept } from './kept';
import { weightKnown, type WeightKnown } from './weight';

/** A plan as pages and papers tell it: worked out anew from what was kept. */
export type PlanShown = PlanKept & PlanTold & { readonly by: string };

/** The latest plan of a commission, worked out anew; null where there is none. */
export async function findPlan(
  actor: Actor,
  commissionId: string,
  system: LengthSystem,
): Promise<PlanShown | null> {
  assertAllowed(actor, 'commissions.see');
  const kept = await loadPlan(db(), commissionId);
  if (!kept) return null;
  const staff = await db().staff.findUnique({
    where: { id: kept.staffId },
    select: { name: true },
  });
  return { ...kept, ...planTold(kept, system), by: staff?.name ?? 'somebody' };
}

/** What the piece of a commission weighs, as well as it is known. */
export async function findWeight(actor: Actor, commissionId: string): Promise<WeightKnown | null> {
  assertAllowed(actor, 'commissions.see');
  return weightKnown(db(), commissionId);
}
