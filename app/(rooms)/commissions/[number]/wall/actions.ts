'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { keepPlanInput } from '@/lib/installation/input/plan/plan';
import { keepSurveyInput } from '@/lib/installation/input/survey/survey';
import { wallRefusalMessage, type AnyWallRefusal } from '@/lib/installation/rules/survey/refusals';
import { keepPlan } from '@/lib/installation/writes/plan/keep';
import { keepSurvey } from '@/lib/installation/writes/survey/keep';
import { getGallery } from '@/lib/platform/settings';

/** Keeps a wall as somebody looked at it. */
export const keepWall = formAction('installation.do', keepSurveyInput, async (doer, input) => {
  const kept = await keepSurvey(doer, input);
  if (!kept.ok) return refused(await wordsOf(kept.refusal));
  revalidatePath('/', 'layout');
  redirect(`/commissions/${kept.value.commissionNumber}/wall?kept=${kept.value.version}`);
});

/** Works out how a piece hangs, and keeps it where it holds. */
export const planIt = formAction('installation.do', keepPlanInput, async (doer, input) => {
  const kept = await keepPlan(doer, input);
  if (!kept.ok) return refused(await wordsOf(kept.refusal));
  revalidatePath('/', 'layout');
  redirect(`/commissions/${kept.value.commissionNumber}/wall/plan?kept=${kept.value.version}`);
});

async function wordsOf(refusal: AnyWallRefusal): Promise<string> {
  const { lengthUnit, timeZone } = await getGallery();
  return wallRefusalMessage(refusal, { system: lengthUnit, zone: timeZone });
}
