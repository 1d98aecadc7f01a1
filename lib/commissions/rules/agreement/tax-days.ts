import { formatDay, type Day } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { TreatmentKind } from '@/lib/tax/rules/treatment';
import type { CommissionTaxAs, CommissionTaxRule } from './tax';

/** A rule of a state with the days on which it holds; `untilOn` is the first day it does not. */
export type DatedTaxRule = CommissionTaxRule & {
  readonly id: string;
  readonly state: string;
  readonly taxAs: CommissionTaxAs;
  readonly fromOn: Day;
  readonly untilOn: Day | null;
};

/** Why a rule was not taken. */
export type TaxRuleRefusal = { readonly code: 'tax_rule_follows_already'; readonly fromOn: Day };

/**
 * Which rule a new one takes the place of, if it may. What was kept is never changed but for its
 * last day.
 *
 * @param kept all of the state, in any order
 * @returns the one to close on the new one's first day, null when there is none open; refuses
 *   `tax_rule_follows_already` when one begins on that day or later, or still holds then and has its
 *   end
 * @example "not taxed" from 1 July closes "taxed", whose last day is then 30 June
 */
export function decideTaxRule<Kept extends Pick<DatedTaxRule, 'taxAs' | 'fromOn' | 'untilOn'>>(
  kept: readonly Kept[],
  asked: Pick<DatedTaxRule, 'taxAs' | 'fromOn'>,
): Result<Kept | null, TaxRuleRefusal> {
  const own = kept.filter(({ taxAs }) => taxAs === asked.taxAs);
  const inTheWay = own.find(
    ({ fromOn, untilOn }) => fromOn >= asked.fromOn || (untilOn ?? '') > asked.fromOn,
  );
  if (inTheWay) return refuse({ code: 'tax_rule_follows_already', fromOn: inTheWay.fromOn });
  return ok(own.find(({ untilOn }) => untilOn === null) ?? null);
}

/** What each treatment means for a commission, as a page and a form say it. */
export const ruleWords: Record<TreatmentKind, string> = {
  taxed: 'Taxed like a piece that is sold',
  not_taxed: 'Not taxed as a sale',
  not_taxed_when_separate: 'The piece is taxed; hanging and setting are not, as lines of their own',
};

/** A rule as one sentence or two of a list. */
export function taxRuleWords({
  treatment,
  owesOnMaterials,
}: Pick<CommissionTaxRule, 'treatment' | 'owesOnMaterials'>): string {
  const owes = owesOnMaterials ? ' The gallery owes tax on what the materials cost.' : '';
  return `${ruleWords[treatment]}.${owes}`;
}

/**
 * Which rule was used, for whoever looks at the tax of a commission.
 *
 * @example with nothing kept: 'No rule is kept for a fixture … in Oregon: taxed like a piece …'
 */
export function usedRuleWords(
  rule: DatedTaxRule | null,
  { taxAs, where }: { taxAs: CommissionTaxAs; where: string },
): string {
  if (rule) {
    return `${where}, kept from ${formatDay(rule.fromOn, 'short')} on: ${taxRuleWords(rule)}`;
  }
  return taxAs === 'goods_hung'
    ? `${where}: no rule of its own is kept for it, so it is taxed like any piece that is sold there.`
    : `${where}: no rule is kept for it, so it is taxed like a piece that is sold.`;
}
