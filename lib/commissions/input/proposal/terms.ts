import { z } from 'zod';
import { planEvents } from '@/lib/commissions/rules/facts';
import type { PlanWish } from '@/lib/commissions/rules/proposal/plan';
import { centsInput, percentInput } from '@/lib/money/input';
import { percentsAddUp } from '@/lib/money/rules';

const keptCents = z
  .string()
  .regex(/^\d{1,12}$/)
  .transform(BigInt);
const keptDecimal = z.string().regex(/^\d{1,5}(\.\d{1,3})?$/);

/** The price basis as it is kept: cents and decimals as text. */
export const basisShape = z.strictObject({
  hourCents: keptCents,
  hoursPerM2: z.strictObject({
    design: keptDecimal,
    making: keptDecimal,
    glazing: keptDecimal,
    kiln: keptDecimal,
    assembly: keptDecimal,
    office: keptDecimal,
  }),
  clayCentsPerKg: keptCents,
  glazeCentsPerM2: keptCents,
  firingCents: keptCents,
  boardCentsPerM2: keptCents,
  frameCentsPerM: keptCents,
  lossPercent: keptDecimal,
  overheadPercent: keptDecimal,
  contingencyPercent: keptDecimal,
  marginPercent: keptDecimal,
  areaCentsPerM2: z.tuple([keptCents, keptCents, keptCents]),
});

/** A plan as it is kept. */
export const planShape = z
  .array(
    z.union([
      z.strictObject({
        name: z.string().min(1).max(60),
        event: z.enum(planEvents),
        percent: keptDecimal,
        amountCents: z.null(),
      }),
      z.strictObject({
        name: z.string().min(1).max(60),
        event: z.enum(planEvents),
        percent: z.null(),
        amountCents: keptCents,
      }),
    ]),
  )
  .min(1)
  .max(8);

/** The most steps that a form of a plan offers. */
export const planStepsMost = 5;

const steps = Array.from({ length: planStepsMost }, (_none, at) => at + 1);
const planLine = z.string().trim().max(60, 'Keep it to 60 letters.').prefault('');

/** The fields of a plan in a form: name, event and how much, of up to five steps. */
export const planFields = {
  stepName1: planLine,
  stepEvent1: planLine,
  stepMuch1: planLine,
  stepName2: planLine,
  stepEvent2: planLine,
  stepMuch2: planLine,
  stepName3: planLine,
  stepEvent3: planLine,
  stepMuch3: planLine,
  stepName4: planLine,
  stepEvent4: planLine,
  stepMuch4: planLine,
  stepName5: planLine,
  stepEvent5: planLine,
  stepMuch5: planLine,
};

/**
 * Reads a plan from the fields of a form: "25 %" or "25" is a share, "$250" or "250.00" an amount.
 *
 * @returns the steps, or the fault at the field where it is
 * @example a last step with an empty "how much" takes the rest
 */
export function readPlan(
  fields: Readonly<Record<string, unknown>>,
): { plan: PlanWish[] } | { field: string; fault: string } {
  const written = steps.filter((at) => textOf(fields, `stepName${at}`) !== '');
  const plan: PlanWish[] = [];
  for (const at of written) {
    const isLast = at === written.at(-1);
    const step = readStep(fields, { at, isLast, before: plan });
    if ('fault' in step) return step;
    plan.push(step);
  }
  if (plan.length === 0) return { field: 'stepName1', fault: 'A plan has at least one step.' };
  const percents = plan.flatMap(({ percent }) => (percent === null ? [] : [percent]));
  if (percents.length === plan.length && !percentsAddUp(percents)) {
    return {
      field: 'stepMuch1',
      fault: 'The shares add up to a hundred, or the last is left empty.',
    };
  }
  return { plan };
}

function readStep(
  fields: Readonly<Record<string, unknown>>,
  { at, isLast, before }: { at: number; isLast: boolean; before: readonly PlanWish[] },
): PlanWish | { field: string; fault: string } {
  const name = textOf(fields, `stepName${at}`);
  const event = planEvents.find((each) => each === textOf(fields, `stepEvent${at}`));
  if (!event) return { field: `stepEvent${at}`, fault: 'Say what makes it fall due.' };
  const much = textOf(fields, `stepMuch${at}`);
  if (much === '' && isLast) return restStep({ name, event }, before);
  const share = percentInput.safeParse(much.replace(/\s*%$/, ''));
  if (share.success && !/[$.]\d\d$|\$/.test(much)) {
    return { name, event, percent: share.data, amountCents: null };
  }
  const amount = centsInput.safeParse(much.replace(/^\$\s*/, ''));
  if (amount.success) return { name, event, percent: null, amountCents: amount.data };
  return { field: `stepMuch${at}`, fault: 'A share such as 25 %, or an amount such as $250.00.' };
}

/** The last step takes the rest: in percent where all before are shares, and as it comes otherwise. */
function restStep(step: Pick<PlanWish, 'name' | 'event'>, before: readonly PlanWish[]): PlanWish {
  const percents = before.flatMap(({ percent }) => (percent === null ? [] : [Number(percent)]));
  const left = 100 - percents.reduce((sum, each) => sum + each, 0);
  const isShare = percents.length === before.length && left > 0;
  return isShare
    ? { ...step, percent: String(Math.round(left * 1000) / 1000), amountCents: null }
    : { ...step, percent: null, amountCents: 0n };
}

function textOf(fields: Readonly<Record<string, unknown>>, name: string): string {
  const value = fields[name];
  return typeof value === 'string' ? value.trim() : '';
}
