import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import { shareCents, splitCents, sumCents, type Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { LayawayRefusal } from './refusals';

/** Pieces are put away for at most so many days. */
export const layawayDaysMost = 366;

/** What is taken off the pieces together, in cents, and by whom. */
export type AskedDiscount = {
  discountCents: Cents;
  reason: string;
  /** How much staff may take off by themselves, in a hundred; null when the doer may go beyond. */
  percentMost: string | null;
};

/**
 * Shares what is taken off among the lines by their prices, to the cent.
 *
 * @param grossCents what each line comes to before, in cents
 * @returns one amount for each line; refuses, in this order: no reason given, as much as the whole
 *   price or more, more than staff may take off
 * @example 10.00 off lines of 30.00 and 60.00 // 3.33 and 6.67
 */
export function shareDiscount(
  grossCents: readonly Cents[],
  { discountCents, reason, percentMost }: AskedDiscount,
): Result<Cents[], LayawayRefusal> {
  if (discountCents === 0n) return ok(grossCents.map(() => 0n));
  if (reason === '') return refuse({ code: 'discount_without_reason' });
  const wholeCents = sumCents(grossCents);
  if (discountCents >= wholeCents) {
    return refuse({ code: 'discount_above_price', netCents: wholeCents });
  }
  if (percentMost !== null && discountCents > shareCents(wholeCents, percentMost, 'half-up')) {
    return refuse({ code: 'discount_beyond_staff', percent: percentMost });
  }
  return ok(splitCents(discountCents, grossCents));
}

/** How a layaway is to be paid. */
export type Plan = {
  totalCents: Cents;
  downCents: Cents;
  payments: number;
  agreedOn: Day;
  finalOn: Day;
};

/**
 * Whether a layaway can be paid like that.
 *
 * @returns true; refuses, in this order: a last day with fewer days before it than payments, one
 *   more than a year away, a down payment that leaves no cent for each later payment
 */
export function checkPlan(plan: Plan): Result<true, LayawayRefusal> {
  const { totalCents, downCents, payments, agreedOn, finalOn } = plan;
  const days = daysBetween(agreedOn, finalOn);
  if (days < payments) return refuse({ code: 'last_day_too_soon', payments, agreedOn });
  if (days > layawayDaysMost)
    return refuse({ code: 'last_day_too_far', daysMost: layawayDaysMost });
  if (totalCents - downCents < BigInt(payments)) {
    return refuse({ code: 'down_leaves_nothing', totalCents, payments });
  }
  return ok(true);
}

/**
 * The plan as the gallery proposes it: its own share down, rounded up to the cent, and its own
 * number of days.
 */
export function planByDefault(
  totalCents: Cents,
  agreedOn: Day,
  terms: { layawayDownPercent: string; layawayDays: number },
): Plan {
  const wishedCents = shareCents(totalCents, terms.layawayDownPercent, 'up');
  const payments = paymentsByDefault;
  const mostCents = totalCents > BigInt(payments) ? totalCents - BigInt(payments) : 0n;
  return {
    ...{ totalCents, payments, agreedOn },
    downCents: wishedCents < mostCents ? wishedCents : mostCents,
    finalOn: addDays(agreedOn, terms.layawayDays),
  };
}

/** Common practice: three equal payments after the down payment. */
const paymentsByDefault = 3;
