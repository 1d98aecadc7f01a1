import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { fixingAskedInput, type FixingAskedKept } from '@/lib/installation/input/plan/asked';
import { surveyOf, surveySelect, type SurveyKept } from '@/lib/installation/reads/survey/kept';
import { invariant } from '@/lib/platform/invariant';

const planSelect = {
  ...{ id: true, version: true, weightG: true, asked: true, isAllowed: true },
  ...{ surveyId: true, staffId: true, at: true },
  survey: { select: surveySelect },
  commission: {
    select: { surveys: { select: { id: true }, orderBy: { version: 'desc' }, take: 1 } },
  },
} as const satisfies Prisma.FixingPlanSelect;

/** A fixing plan as it was kept, with the survey it stands on. */
export type PlanKept = {
  readonly id: string;
  readonly version: number;
  readonly asked: FixingAskedKept;
  readonly survey: SurveyKept;
  /** Whether the wall was looked at again since. */
  readonly isOld: boolean;
  readonly staffId: string;
  readonly at: Date;
};

/**
 * The latest fixing plan of a commission.
 *
 * @returns null where there is none
 * @throws when what was kept is no plan: a bug
 */
export async function loadPlan(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<PlanKept | null> {
  const row = await from.fixingPlan.findFirst({
    where: { commissionId },
    select: planSelect,
    orderBy: { version: 'desc' },
  });
  if (!row) return null;
  const read = fixingAskedInput.safeParse(row.asked);
  invariant(read.success, 'A plan is kept in the shape that is asked for.');
  const { id, version, survey, staffId, at, surveyId, commission } = row;
  const isOld = commission.surveys[0]?.id !== surveyId;
  return { id, version, asked: read.data, survey: surveyOf(survey), isOld, staffId, at };
}
