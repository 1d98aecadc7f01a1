import { formatCents, sumCents, type Cents } from '@/lib/money/rules';
import { divideRounded } from '@/lib/money/rules/decimal';
import { hoursText } from '../rules';

/** What a fair took and what it cost, in cents; the hours in minutes. */
export type FairMoney = {
  /** Sold there before tax, after discounts, less what came back. */
  soldCents: Cents;
  feeCents: Cents;
  travelCents: Cents;
  otherCents: Cents;
  /** What making the sold pieces cost; pieces nobody reckoned count as nothing. */
  makingCents: Cents;
  minutes: number;
};

/** What a fair earned. */
export type FairEarning = {
  costCents: Cents;
  /** Sold, less fee, travel and the rest. */
  leftCents: Cents;
  /** That, less what making the pieces cost. */
  afterMakingCents: Cents;
  /** For each hour worked, rounded half up to a cent; null while no hours are written down. */
  perHourCents: Cents | null;
};

/**
 * What a fair earned: what was sold, less what it cost to be there and what the pieces cost to
 * make, and that for each hour.
 *
 * @source common practice: sellers who write down fee and hours find out which fairs pay
 * @example 1,240.00 sold, 310.00 costs, 200.00 making, 16 hours: 730.00 is left, 45.63 an hour
 */
export function fairEarning(money: FairMoney): FairEarning {
  const costCents = sumCents([money.feeCents, money.travelCents, money.otherCents]);
  const leftCents = money.soldCents - costCents;
  const afterMakingCents = leftCents - money.makingCents;
  const perHourCents =
    money.minutes === 0
      ? null
      : divideRounded(afterMakingCents * 60n, BigInt(money.minutes), 'half-up');
  return { costCents, leftCents, afterMakingCents, perHourCents };
}

/** Says what a fair earned, as the owner wants to hear it in the evening. */
export function fairEarningWords(money: FairMoney, earning: FairEarning): string {
  const { costCents, afterMakingCents, perHourCents } = earning;
  if (money.soldCents === 0n) {
    return `Nothing is sold there yet. Being there costs ${formatCents(costCents)}.`;
  }
  const sold = `${formatCents(money.soldCents)} sold`;
  const made = money.makingCents === 0n ? '' : ` and ${formatCents(money.makingCents)} of making`;
  const against = `${sold}, against ${formatCents(costCents)} of fee, travel and the rest${made}`;
  const left =
    afterMakingCents < 0n
      ? `the fair lost ${formatCents(-afterMakingCents)}`
      : `${formatCents(afterMakingCents)} is left`;
  if (perHourCents === null) return `${against}: ${left}. No hours are written down yet.`;
  return `${against}: ${left}, ${formatCents(perHourCents)} an hour over ${hoursText(money.minutes)} hours.`;
}

/** The steps of {@link fairEarning} as short sentences with their numbers. */
export function fairEarningSteps(money: FairMoney, earning: FairEarning): string[] {
  const { feeCents, travelCents, otherCents } = money;
  const [fee, travel, other] = [feeCents, travelCents, otherCents].map((cents) =>
    formatCents(cents),
  );
  const steps = [
    `Fee ${fee ?? ''} + travel ${travel ?? ''} + other ${other ?? ''} = ${formatCents(earning.costCents)}.`,
    `Sold ${formatCents(money.soldCents)} − ${formatCents(earning.costCents)} = ${formatCents(earning.leftCents)}.`,
    `Less ${formatCents(money.makingCents)} for making what was sold = ${formatCents(earning.afterMakingCents)}.`,
  ];
  if (earning.perHourCents === null) return steps;
  return [
    ...steps,
    `Divided by ${hoursText(money.minutes)} hours = ${formatCents(earning.perHourCents)} an hour.`,
  ];
}
