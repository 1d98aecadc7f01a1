import type { PlanEvent } from '@/lib/commissions/rules/facts';
import { shareCents, splitByPercents, percentsAddUp, type Cents } from '@/lib/money/rules';

/** A step of a plan as people agree on it: a share of the whole, or an amount. */
export type PlanWish = {
  readonly name: string;
  readonly event: PlanEvent;
} & (
  | { readonly percent: string; readonly amountCents: null }
  | { readonly percent: null; readonly amountCents: Cents }
);

/** A step with what it comes to, in cents. */
export type PlanStep = {
  readonly position: number;
  readonly name: string;
  readonly event: PlanEvent;
  readonly percent: string | null;
  readonly amountCents: Cents;
};

/** The events as they are said after "due". */
export const eventWords: Record<PlanEvent, string> = {
  agreed: 'when it is agreed',
  colours_approved: 'when the colours are approved',
  out_of_bisque: 'when it is out of the bisque',
  before_hand_over: 'before it is handed over',
  hung: 'when it hangs',
};

/**
 * The amounts of a plan of payments. They always add up to the whole: percents that make a hundred
 * are split by largest remainder; otherwise each step takes its own and the last what is left.
 *
 * @param totalCents price and tax
 * @returns null when the steps before the last come to more than the whole
 * @source largest remainder (Hamilton): OpenStax, Contemporary Mathematics, section 11.4
 * @example 10,001 by 50, 30 and 20 percent: 5001, 3000, 2000
 */
export function splitPlan(steps: readonly PlanWish[], totalCents: Cents): PlanStep[] | null {
  const amounts = amountsOf(steps, totalCents);
  if (amounts.some((cents) => cents < 0n)) return null;
  return steps.map(({ name, event, percent }, at) => ({
    ...{ position: at + 1, name, event, percent },
    amountCents: amounts[at] ?? 0n,
  }));
}

function amountsOf(steps: readonly PlanWish[], totalCents: Cents): Cents[] {
  const percents = steps.flatMap(({ percent }) => (percent === null ? [] : [percent]));
  if (percents.length === steps.length && percentsAddUp(percents)) {
    return splitByPercents(totalCents, percents);
  }
  let left = totalCents;
  return steps.map(({ percent, amountCents }, at) => {
    const isLast = at === steps.length - 1;
    const own = percent === null ? amountCents : shareCents(totalCents, percent, 'half-up');
    const cents = isLast ? left : own;
    left -= cents;
    return cents;
  });
}

/** What is due before the clay is begun: the steps that are tied to the agreement, in cents. */
export function depositOf(steps: readonly Pick<PlanStep, 'event' | 'amountCents'>[]): Cents {
  return steps.reduce((sum, step) => (step.event === 'agreed' ? sum + step.amountCents : sum), 0n);
}
