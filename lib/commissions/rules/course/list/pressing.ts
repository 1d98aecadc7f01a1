import { paidCents, type AskedFact, type CommissionFacts } from '@/lib/commissions/rules/facts';
import { toldDay } from '@/lib/commissions/rules/course/promise';
import { planDue } from '@/lib/commissions/rules/money/plan';
import { daysBetween, type Day } from '@/lib/dates/rules';
import { formatCents, sumCents, type Cents } from '@/lib/money/rules';
import { dayWord, type Telling } from '@/lib/commissions/rules/course/sentences';
import type { Standing } from '@/lib/commissions/rules/course/standing';

/** What presses in a commission: what is over its day, by how many days, and how long it waits. */
export type Pressing = {
  /** Money that was asked for and is over its day, in cents. */
  readonly money: { readonly leftCents: Cents; readonly dueOn: Day; readonly days: number } | null;
  /** A step of the plan whose event has happened, and for which nobody asked yet. */
  readonly toAsk: { readonly name: string; readonly since: Day; readonly days: number } | null;
  readonly promise: {
    readonly promisedOn: Day;
    readonly days: number;
    /** The day they were told of last; null while they were told of none. */
    readonly toldOn: Day | null;
  } | null;
  /** Since when it waits on somebody; null while nobody has to do anything. */
  readonly waits: { readonly since: Day; readonly days: number } | null;
};

/**
 * What presses in a commission on a day: money over its day, a step nobody asked for, a promised day
 * that has passed, and how long it waits on somebody.
 *
 * A day counts as passed on the day after it.
 *
 * @param now where the same facts stand
 * @example promised for 1 May, told on 4 May // promise: 3 days
 */
export function pressing(facts: CommissionFacts, now: Standing, today: Day): Pressing {
  const { waitsOn, since } = now;
  return {
    money: moneyOver(facts, today),
    toAsk: now.where.key === 'deposit_to_ask' ? null : stepToAsk(facts, today),
    promise: promiseOver(facts, today),
    waits: waitsOn === 'nobody' ? null : { since, days: daysBetween(since, today) },
  };
}

/**
 * How many days the most overdue thing is over; nothing when all is in time.
 *
 * @example money 12 days over, the promise 3 // 12
 */
export function daysOver({ money, toAsk, promise }: Pressing): number {
  return Math.max(money?.days ?? 0, toAsk?.days ?? 0, promise?.days ?? 0);
}

/** For sorting: the most overdue first, then the longest waiting, what waits on nobody last. */
export function mostOverdueFirst(one: Pressing, other: Pressing): number {
  const over = daysOver(other) - daysOver(one);
  return over === 0 ? (other.waits?.days ?? -1) - (one.waits?.days ?? -1) : over;
}

/**
 * What is over its day, each as part of a sentence; empty when all is in time.
 *
 * @example '$5,412.50 is 12 days over, due on 3 May'
 */
export function overWords({ money, toAsk, promise }: Pressing, telling: Telling): string[] {
  const { today, seesMoney, currency } = telling;
  const words: string[] = [];
  if (money) {
    const what = seesMoney ? formatCents(money.leftCents, { currency }) : 'a payment';
    words.push(`${what} is ${daysWords(money.days)} over, due on ${dayWord(money.dueOn, today)}`);
  }
  if (promise) {
    const told = promise.toldOn ? `, they were told of ${dayWord(promise.toldOn, today)}` : '';
    const passed = `the promised day, ${dayWord(promise.promisedOn, today)}`;
    words.push(`${passed}, passed ${daysWords(promise.days)} ago${told}`);
  }
  if (toAsk) {
    const due = `“${toAsk.name}” fell due on ${dayWord(toAsk.since, today)}`;
    words.push(`${due} and nobody asked for it`);
  }
  return words;
}

/**
 * How long it waits, as a sentence of its own.
 *
 * @returns null while nobody has to do anything, and on the first day
 */
export function waitsWords({ waits }: Pressing): string | null {
  return waits && waits.days > 0 ? `Waits ${daysWords(waits.days)}` : null;
}

function moneyOver(facts: CommissionFacts, today: Day): Pressing['money'] {
  if (facts.ending) return null;
  const open = openAsked(facts);
  const over = open.filter(({ dueOn }) => dueOn < today);
  const rest = restOwed(facts);
  // After the hand-over everything is owed; from that day on, unless a later one was named.
  if (rest !== null && (open.length === 0 || over.length > 0)) {
    const dueOn = over.reduce((first, each) => earlier(first, each.dueOn), rest.handedOn);
    return dueOn < today
      ? { leftCents: rest.leftCents, dueOn, days: daysBetween(dueOn, today) }
      : null;
  }
  const [first, ...others] = over;
  if (!first) return null;
  const dueOn = others.reduce((day, each) => earlier(day, each.dueOn), first.dueOn);
  const leftCents = sumCents(over.map((each) => each.leftCents));
  return { leftCents, dueOn, days: daysBetween(dueOn, today) };
}

function restOwed({ handOver, ...facts }: CommissionFacts) {
  if (!handOver) return null;
  const leftCents = handOver.totalCents - paidCents(facts);
  return leftCents > 0n ? { leftCents, handedOn: handOver.handedOn } : null;
}

/** What was asked for and is not covered by what came in; money fills the plan in its order. */
function openAsked(facts: CommissionFacts): (AskedFact & { leftCents: Cents })[] {
  const paid = paidCents(facts);
  if (facts.handOver && restOwed(facts) === null) return [];
  const steps = planDue(facts, plannedCents(facts));
  return facts.asked
    .map((ask, at) => {
      const before =
        ask.stepPosition === null
          ? facts.asked.slice(0, at)
          : steps.filter(({ position }) => position < (ask.stepPosition ?? 0));
      const throughCents = sumCents(before.map((each) => each.amountCents)) + ask.amountCents;
      const openCents = throughCents - paid;
      const leftCents = openCents < ask.amountCents ? openCents : ask.amountCents;
      return { ...ask, leftCents };
    })
    .filter(({ leftCents }) => leftCents > 0n);
}

function stepToAsk(facts: CommissionFacts, today: Day): Pressing['toAsk'] {
  if (facts.ending || facts.handOver) return null;
  const step = planDue(facts, plannedCents(facts)).find(
    ({ dueSince, isAsked, leftCents }) =>
      dueSince !== null && dueSince < today && !isAsked && leftCents > 0n,
  );
  if (!step?.dueSince) return null;
  return { name: step.name, since: step.dueSince, days: daysBetween(step.dueSince, today) };
}

/** What the plan comes to; the last cent of tax is not needed to know what is over its day. */
function plannedCents({ agreement, plan, changeOrders, handOver }: CommissionFacts): Cents {
  if (handOver) return handOver.totalCents;
  if (plan.length === 0) return agreement?.priceCents ?? 0n;
  const signed = changeOrders.filter(({ signedOn }) => signedOn !== null);
  return sumCents([
    ...plan.map((step) => step.amountCents),
    ...signed.map((one) => one.priceCents),
  ]);
}

function promiseOver(facts: CommissionFacts, today: Day): Pressing['promise'] {
  const promisedOn = facts.agreement?.promisedOn ?? null;
  if (promisedOn === null || promisedOn >= today || facts.handOver || facts.ending) return null;
  return { promisedOn, days: daysBetween(promisedOn, today), toldOn: toldDay(facts) };
}

function earlier(one: Day, other: Day): Day {
  return other < one ? other : one;
}

function daysWords(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}
