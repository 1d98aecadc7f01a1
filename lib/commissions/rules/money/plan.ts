import { daysDone } from '@/lib/commissions/rules/course/band';
import { finishedOn, isFinished } from '@/lib/commissions/rules/course/standing';
import {
  paidCents,
  planEvents,
  type CommissionFacts,
  type PlanEvent,
  type PlanStepFact,
} from '@/lib/commissions/rules/facts';
import type { Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';

/** A step of the plan as it stands: what it comes to, whether it is due, and what of it is paid. */
export type PlanStepDue = PlanStepFact & {
  /** The day on which its event happened; null before. */
  readonly dueSince: Day | null;
  /** Whether it was asked for. */
  readonly isAsked: boolean;
  readonly paidCents: Cents;
  readonly leftCents: Cents;
};

/**
 * The day on which each event happened; null before.
 *
 * @source the events are those that the plan names; out of the bisque is every part's
 */
export function eventDays(facts: CommissionFacts): Record<PlanEvent, Day | null> {
  const days = daysDone(facts);
  const isMade = facts.jobs.length > 0 && facts.jobs.every(isFinished);
  return {
    agreed: days.agreed,
    colours_approved: days.colours,
    out_of_bisque: days.bisque,
    before_hand_over: isMade ? finishedOn(facts) : (facts.handOver?.handedOn ?? null),
    hung: facts.handOver?.handedOn ?? null,
  };
}

/**
 * The plan as it stands. The steps always come to the whole: a signed change that names an event is
 * added to the step of that event, the last step takes what is left after tax and all changes, and
 * what is taken off beyond it comes off the steps before. Payments fill the steps in their order.
 *
 * An agreement without a plan is its deposit and the rest before the hand-over.
 *
 * @param totalCents price with its signed changes, and tax
 * @returns empty before anything is agreed
 * @example 50, 25 and 25 of 1,000.00 with a change of −300.00: 500.00, 200.00, nothing
 */
export function planDue(facts: CommissionFacts, totalCents: Cents): PlanStepDue[] {
  const steps = amountsNow(stepsOf(facts, totalCents), facts, totalCents);
  const days = eventDays(facts);
  const asked = new Set(facts.asked.map(({ stepPosition }) => stepPosition));
  let money = paidCents(facts);
  return steps.map((step) => {
    const paid = money > step.amountCents ? step.amountCents : money;
    money -= paid;
    return {
      ...step,
      dueSince: days[step.event],
      isAsked: asked.has(step.position),
      paidCents: paid,
      leftCents: step.amountCents - paid,
    };
  });
}

function stepsOf({ agreement, plan }: CommissionFacts, totalCents: Cents): PlanStepFact[] {
  if (!agreement) return [];
  if (plan.length > 0) return [...plan];
  const { depositCents } = agreement;
  const restCents = totalCents - depositCents;
  const steps: PlanStepFact[] = [
    { position: 1, name: 'Deposit', event: 'agreed', amountCents: depositCents },
    { position: 2, name: 'Balance', event: 'before_hand_over', amountCents: restCents },
  ];
  return steps.filter((step) => step.amountCents > 0n);
}

function amountsNow(
  steps: readonly PlanStepFact[],
  facts: CommissionFacts,
  totalCents: Cents,
): PlanStepFact[] {
  const signed = facts.changeOrders.filter(({ signedOn }) => signedOn !== null);
  const withChanges = steps.map((step, at) => {
    const isFirstOfEvent = steps.findIndex(({ event }) => event === step.event) === at;
    const own = isFirstOfEvent ? signed.filter(({ dueEvent }) => dueEvent === step.event) : [];
    const added = sumCents(own.map(({ priceCents }) => priceCents));
    return { ...step, amountCents: notBelowZero(step.amountCents + added) };
  });
  let left = totalCents - sumCents(withChanges.slice(0, -1).map((step) => step.amountCents));
  let debt = 0n;
  return withChanges
    .toReversed()
    .map((step, at) => {
      const wanted = at === 0 ? left : step.amountCents - debt;
      left = 0n;
      debt = wanted < 0n ? -wanted : 0n;
      return { ...step, amountCents: notBelowZero(wanted) };
    })
    .toReversed();
}

function notBelowZero(cents: Cents): Cents {
  return cents > 0n ? cents : 0n;
}

/** What has fallen due by the plan, paid or not, in cents. */
export function fallenDueCents(plan: readonly PlanStepDue[]): Cents {
  const due = plan.filter(({ dueSince }) => dueSince !== null);
  return sumCents(due.map(({ amountCents }) => amountCents));
}

/** What has to be paid before it is handed over and is not, in cents. */
export function owedBeforeHandOverCents(plan: readonly PlanStepDue[]): Cents {
  const before = plan.filter(({ event }) => event !== 'hung');
  return sumCents(before.map(({ leftCents }) => leftCents));
}

/** The events in their order, for sorting. */
export function eventOrder(event: PlanEvent): number {
  return planEvents.indexOf(event);
}
