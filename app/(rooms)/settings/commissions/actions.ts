'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction } from '@/app/form-action';
import { keepCommissionTermsInput } from '@/lib/commissions/input/proposal/keep-terms';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { keepCommissionTerms } from '@/lib/commissions/writes/proposal/terms';

/** Keeps how the gallery prices and agrees. */
export const keepTerms = formAction(
  'settings.keep',
  keepCommissionTermsInput,
  async (doer, input) => {
    const kept = await keepCommissionTerms(doer, input);
    revalidatePath('/', 'layout');
    return answer(kept, commissionRefusalMessage, () => ({
      kind: 'done',
      message: 'Kept. The next proposal begins with it; what was written stays as it was.',
    }));
  },
);
