import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { findOpen, tellHistory } from '@/lib/commissions/writes/carry-out';
import type { KeepPlanInput } from '@/lib/installation/input/plan/plan';
import { loadSurvey } from '@/lib/installation/reads/survey/kept';
import type { AnyWallRefusal } from '@/lib/installation/rules/survey/refusals';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { planFixings } from '@/lib/walls/rules';

/** The plan that was kept, and of which commission. */
export type PlanAdded = { planId: string; version: number; commissionNumber: number };

/**
 * Works out how a piece hangs on the wall that was looked at last, and keeps it where it holds.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown commission,
 *   ended early, handed over, nobody has looked at the wall, it was looked at again meanwhile, and
 *   every reason why there is no plan
 */
export async function keepPlan(
  doer: Doer,
  input: KeepPlanInput,
): Promise<Result<PlanAdded, AnyWallRefusal>> {
  const allowed = allow(doer.actor, 'installation.do');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...plan } = input;
  const command = { key, name: 'keepPlan', staffId: doer.actor.id, input: plan, at: doer.at };
  return onceOnly<PlanAdded, AnyWallRefusal>(command, (tx) => addPlan(tx, doer, plan));
}

/** The step of {@link keepPlan}: joins the caller's transaction, asks nobody for leave. */
export async function addPlan(
  tx: Tx,
  doer: Doer,
  plan: Omit<KeepPlanInput, 'requestKey'>,
): Promise<Result<PlanAdded, AnyWallRefusal>> {
  const { commissionId, surveyId, asked } = plan;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const survey = await loadSurvey(tx, commissionId);
  if (!survey) return refuse({ code: 'not_looked_at' });
  if (survey.id !== surveyId) return refuse({ code: 'survey_is_old' });
  const planned = planFixings({ wall: survey, piece: asked.piece, asked: asked.hanging });
  if (!planned.ok) return refuse({ code: 'no_plan', reasons: planned.refusal });
  const version = (await tx.fixingPlan.count({ where: { commissionId } })) + 1;
  const { weightG } = asked.piece;
  const { id } = await tx.fixingPlan.create({
    data: {
      ...{ commissionId, surveyId, version, weightG, asked, isAllowed: true },
      ...{ staffId: doer.actor.id, at: doer.at },
    },
    select: { id: true },
  });
  const facts = { version, weightG, fixings: planned.value.holes.length };
  await tellHistory(tx, doer, { commissionId, did: 'planned how it hangs', facts });
  return ok({ planId: id, version, commissionNumber: found.value.number });
}
