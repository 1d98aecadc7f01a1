'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction, refused } from '@/app/form-action';
import { certificateInput, tradeTermsInput, withdrawInput } from '@/lib/collectors/input/trade';
import { tradeRefusalMessage } from '@/lib/collectors/rules/trade-refusals';
import { keepCertificate, setTradeTerms, withdrawCertificate } from '@/lib/collectors/writes/trade';
import { formatCents } from '@/lib/money/rules';
import { payFeesInput } from '@/lib/sales/input/referral-fee';
import { feeRefusalMessage } from '@/lib/sales/rules/referral-fee';
import { payReferralFee } from '@/lib/sales/writes/referral-fee';

/** Puts a resale certificate on file. */
export const fileCertificate = formAction(
  'collectors.write',
  certificateInput,
  async (doer, input) => {
    const kept = await keepCertificate(doer, input);
    if (!kept.ok) {
      const message = tradeRefusalMessage(kept.refusal);
      const isPicture = kept.refusal.code === 'picture_not_kept';
      return refused({ message, fields: isPicture ? { picture: message } : {} });
    }
    revalidatePath('/collectors', 'layout');
    return { kind: 'done', message: `On file, good for ${input.state}.` };
  },
);

/** Withdraws a resale certificate. */
export const withdraw = formAction('collectors.write', withdrawInput, async (doer, input) => {
  const withdrawn = await withdrawCertificate(doer, input);
  revalidatePath('/collectors', 'layout');
  return answer(withdrawn, tradeRefusalMessage, () => ({
    kind: 'done',
    message: 'Withdrawn. Tax is charged from now on.',
  }));
});

/** Sets what a designer gets. */
export const keepTradeTerms = formAction('trade.keep', tradeTermsInput, async (doer, input) => {
  const kept = await setTradeTerms(doer, input);
  revalidatePath('/collectors', 'layout');
  return answer(kept, tradeRefusalMessage, () => ({
    kind: 'done',
    message: 'Kept. It holds for sales from that day on.',
  }));
});

/** Writes down that referral fees were paid. */
export const payFees = formAction('trade.keep', payFeesInput, async (doer, input) => {
  const paid = await payReferralFee(doer, input);
  revalidatePath('/collectors', 'layout');
  return answer(paid, feeRefusalMessage, (value) => ({
    kind: 'done',
    message: `${formatCents(BigInt(value.paid))} paid, and written into the books.`,
  }));
});
