import { isAllowed, type Actor } from '@/lib/access/rules';
import type { AppointmentKind } from '@/lib/installation/rules/diary/kinds';
import { wordsSaid, type SaidKey, type Tick } from './ticks';

/** What may be open about the plan by which a piece hangs. */
export type PlanQuestion =
  'no_plan' | 'plan_is_old' | 'plan_does_not_hold' | 'heavier_than_planned';

/** The newest plan of a piece; null when there is none. */
export type PlanStanding = {
  /** The weight it was worked out for. */
  readonly weightG: number;
  readonly isAllowed: boolean;
  /** The wall was looked at anew since. */
  readonly isOld: boolean;
} | null;

/**
 * What is open about a plan; null when it stands.
 *
 * @param scaleG the weight from the scale; null where it was not weighed
 */
export function planQuestionOf(plan: PlanStanding, scaleG: number | null): PlanQuestion | null {
  if (!plan) return 'no_plan';
  if (!plan.isAllowed) return 'plan_does_not_hold';
  if (isHeavierThanPlanned(plan.weightG, scaleG)) return 'heavier_than_planned';
  return plan.isOld ? 'plan_is_old' : null;
}

function isHeavierThanPlanned(plannedG: number, scaleG: number | null): boolean {
  return scaleG !== null && scaleG > plannedG;
}

/** The question in a sentence. */
export const planQuestionWords: Readonly<Record<PlanQuestion, string>> = {
  no_plan: 'There is no plan of the fixings. What holds it, and how is that known?',
  plan_is_old: 'The wall was looked at again since the plan was made. Does the plan still fit?',
  heavier_than_planned:
    'The scale says more than the plan was worked out for. Do not hang it by that plan: what holds it now?',
  plan_does_not_hold: 'By its own figures the plan does not hold. What was done instead?',
};

/** What has to be there before a hanging is signed. */
export type BeforeSigning = 'weight' | 'fixings_picture' | PlanQuestion;

/** Which words stand in for what is missing. */
export const wordsInstead: Readonly<Record<BeforeSigning, SaidKey>> = {
  weight: 'no_scale',
  fixings_picture: 'no_fixings_picture',
  no_plan: 'plan_word',
  plan_is_old: 'plan_word',
  plan_does_not_hold: 'plan_word',
  heavier_than_planned: 'plan_word',
};

/** What is missing, as it is said in a sentence. */
export const missingWords: Readonly<Record<BeforeSigning, string>> = {
  weight: 'the weight from the scale, or why there is none',
  fixings_picture: 'a picture of the fixings, or why there is none',
  no_plan: 'a word on what holds it, as there is no plan of the fixings',
  plan_is_old: 'a word on the plan, as the wall was looked at again since',
  heavier_than_planned:
    'a word on what holds it, as it is heavier than the plan was worked out for',
  plan_does_not_hold: 'a word on what was done instead of the plan, which does not hold',
};

/** What is known of a day before it is signed. */
export type DayToSign = {
  readonly kind: AppointmentKind;
  readonly isWeighed: boolean;
  readonly hasFixingsPicture: boolean;
  readonly plan: PlanStanding;
  /** As well as it is known. */
  readonly weightG: number | null;
  readonly held: ReadonlyMap<string, Tick>;
};

/**
 * What is missing before a hanging may be signed: the weight from the scale, a picture of the
 * fixings, an answer to what is open about the plan; each, or a word on why not.
 *
 * @returns nothing for a delivery or a fetching, which hang nothing
 * @source common practice: in ten years that picture is the only evidence of what holds it
 */
export function missingBeforeSigning(day: DayToSign): readonly BeforeSigning[] {
  if (day.kind !== 'hanging') return [];
  const open: BeforeSigning[] = [];
  if (!day.isWeighed) open.push('weight');
  const question = planQuestionOf(day.plan, day.isWeighed ? day.weightG : null);
  if (question) open.push(question);
  if (!day.hasFixingsPicture) open.push('fixings_picture');
  return open.filter((each) => wordsSaid(day.held, wordsInstead[each]) === null);
}

/** Whether signing on such a day hands a piece over. */
export function handsOver(kind: AppointmentKind): boolean {
  return kind === 'hanging' || kind === 'delivery' || kind === 'fetching';
}

/**
 * Whether somebody may have the collector sign by the work order: whoever goes along, and whoever
 * hands over anyway. Only the latter says that a piece goes before it is paid.
 */
export function mayHaveItSigned(
  actor: Pick<Actor, 'id' | 'roles'>,
  crewIds: readonly string[],
): boolean {
  if (isAllowed(actor.roles, 'commissions.hand_over')) return true;
  return isAllowed(actor.roles, 'installation.do') && crewIds.includes(actor.id);
}
