import { paidCents, type CommissionFacts } from '@/lib/commissions/rules/facts';
import { fallenDueCents, planDue, type PlanStepDue } from '@/lib/commissions/rules/money/plan';
import { commissionMoney, type CommissionMoney } from '@/lib/commissions/rules/money/sums';
import { sumCents, type Cents } from '@/lib/money/rules';

/** The money of a commission as every page tells it: the sums, and the plan behind them. */
export type MoneyNow = { readonly money: CommissionMoney; readonly plan: readonly PlanStepDue[] };

/**
 * The money of a commission as it stands. After an early end the price is what stays of it, without
 * tax, all of it due, and there is no plan any more.
 *
 * @param sums price with its signed changes, its tax, and the deposit of the agreement, in cents
 * @example 1,000.00 stay of an early end, 1,400.00 paid: nothing due, 400.00 beyond it
 */
export function moneyNow(
  facts: CommissionFacts,
  sums: { readonly priceCents: Cents; readonly taxCents: Cents; readonly depositCents: Cents },
): MoneyNow {
  const invoicedCents = sumCents(facts.asked.map(({ amountCents }) => amountCents));
  const said = { paidCents: paidCents(facts), invoicedCents };
  if (facts.ending) {
    const { feeCents: priceCents } = facts.ending;
    const stays = { priceCents, taxCents: 0n, depositCents: 0n, fallenDueCents: priceCents };
    return { money: commissionMoney({ ...said, ...stays }), plan: [] };
  }
  const plan = planDue(facts, sums.priceCents + sums.taxCents);
  const dueCents = fallenDueCents(plan);
  return { money: commissionMoney({ ...said, ...sums, fallenDueCents: dueCents }), plan };
}
