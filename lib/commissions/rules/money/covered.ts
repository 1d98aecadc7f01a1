import type { PlanStepDue } from '@/lib/commissions/rules/money/plan';
import { sumCents, type Cents } from '@/lib/money/rules';

/** Money that was asked for, in cents, and what came in under its own name, less what went back of it. */
export type AskToFill = {
  readonly amountCents: Cents;
  readonly namedCents: Cents;
  /** What was taken back asks for nothing. */
  readonly isWithdrawn: boolean;
};

/**
 * What has come in for everything that was asked for. Money that names what it is for goes there
 * first; what names nothing, or is more than was asked for, fills the others in their order.
 *
 * @param otherCents what came in under no name, less what went back of it
 * @returns cents for each, in the order given; never more than was asked for
 * @example asked for 500.00 and 250.00, 600.00 came for the first: 500.00 and 100.00
 */
export function paidOfAsks(asks: readonly AskToFill[], otherCents: Cents): Cents[] {
  const own = asks.map((ask) => lesser(ask.namedCents, amountOf(ask)));
  const spilled = sumCents(asks.map((ask, at) => ask.namedCents - (own[at] ?? 0n)));
  let left = otherCents + spilled;
  return asks.map((ask, at) => {
    const named = own[at] ?? 0n;
    const more = lesser(left > 0n ? left : 0n, amountOf(ask) - named);
    left -= more;
    return named + more;
  });
}

function amountOf({ amountCents, isWithdrawn }: AskToFill): Cents {
  return isWithdrawn ? 0n : amountCents;
}

/** What of a step of the plan was covered by one payment, in cents. */
export type StepCovered = {
  readonly name: string;
  readonly cents: Cents;
  readonly ofCents: Cents;
};

/** What a payment went to: the steps of the plan, and what was more than all of them. */
export type Covered = { readonly steps: readonly StepCovered[]; readonly beyondCents: Cents };

/**
 * What a payment went to. Payments fill the steps of the plan in their order.
 *
 * @param beforeCents what was there before it, less what had gone back
 * @example a plan of 500.00 and 500.00, 400.00 there, 300.00 more: 100.00 and 200.00
 */
export function coveredBy(
  plan: readonly Pick<PlanStepDue, 'name' | 'amountCents'>[],
  beforeCents: Cents,
  amountCents: Cents,
): Covered {
  let start = 0n;
  let left = amountCents;
  const steps: StepCovered[] = [];
  for (const { name, amountCents: ofCents } of plan) {
    const end = start + ofCents;
    const open = end - (beforeCents > start ? beforeCents : start);
    const cents = lesser(left, open > 0n ? open : 0n);
    if (cents > 0n) steps.push({ name, cents, ofCents });
    left -= cents;
    start = end;
  }
  return { steps, beyondCents: left };
}

function lesser(one: Cents, other: Cents): Cents {
  return one < other ? one : other;
}
