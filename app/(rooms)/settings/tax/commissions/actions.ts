'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction } from '@/app/form-action';
import { keepTaxRuleInput } from '@/lib/commissions/input/agreement/tax-rule';
import { taxWayWords } from '@/lib/commissions/rules/agreement/tax';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { keepTaxRule } from '@/lib/commissions/writes/agreement/tax-rule';
import { formatDay } from '@/lib/dates/rules';

/** Keeps what a state says about a commission from a day on. */
export const keepRule = formAction('settings.keep', keepTaxRuleInput, async (doer, input) => {
  const kept = await keepTaxRule(doer, input);
  revalidatePath('/', 'layout');
  return answer(kept, commissionRefusalMessage, ({ state }) => ({
    kind: 'done',
    message: `Kept for ${state}: ${taxWayWords[input.taxAs]}, from ${formatDay(input.fromOn, 'short')} on.`,
  }));
});
