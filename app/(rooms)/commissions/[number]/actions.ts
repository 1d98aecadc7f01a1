'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import {
  endCommissionInput,
  letMakingBeginInput,
  openCommissionJobInput,
} from '@/lib/commissions/input/course';
import { agreeInput, askForMoneyInput, takePaymentInput } from '@/lib/commissions/input/money';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { agree } from '@/lib/commissions/writes/agreement';
import { askForMoney } from '@/lib/commissions/writes/money/ask';
import { endCommission } from '@/lib/commissions/writes/end';
import { letMakingBegin, openCommissionJob } from '@/lib/commissions/writes/making';
import { takePayment } from '@/lib/commissions/writes/money';
import { sheetHref } from '../sheet-href';

/** Writes down what was agreed. */
export const writeAgreement = formAction('commissions.agree', agreeInput, async (doer, input) => {
  const agreed = await agree(doer, input);
  if (!agreed.ok) return refused(commissionRefusalMessage(agreed.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(agreed.value.commissionNumber, 'agreement'));
});

/** Asks the collector for money. */
export const ask = formAction('commissions.take_money', askForMoneyInput, async (doer, input) => {
  const asked = await askForMoney(doer, input);
  if (!asked.ok) return refused(commissionRefusalMessage(asked.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(asked.value.commissionNumber, 'ask'));
});

/** Takes a payment; leads to its slip. */
export const pay = formAction('commissions.take_money', takePaymentInput, async (doer, input) => {
  const taken = await takePayment(doer, input);
  if (!taken.ok) return refused(commissionRefusalMessage(taken.refusal));
  revalidatePath('/', 'layout');
  redirect(`/commissions/${taken.value.commissionNumber}/payments/${taken.value.number}?done=yes`);
});

/** Opens the job of a commission. */
export const openItsJob = formAction(
  'commissions.write',
  openCommissionJobInput,
  async (doer, input) => {
    const opened = await openCommissionJob(doer, input);
    if (!opened.ok) return refused(commissionRefusalMessage(opened.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(opened.value.commissionNumber, 'job'));
  },
);

/** The owner lets the making begin, and says why. */
export const letBegin = formAction(
  'commissions.override_start',
  letMakingBeginInput,
  async (doer, input) => {
    const word = await letMakingBegin(doer, input);
    if (!word.ok) return refused(commissionRefusalMessage(word.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(word.value.commissionNumber, 'begin'));
  },
);

/** Ends a commission early. */
export const endIt = formAction('commissions.end', endCommissionInput, async (doer, input) => {
  const ended = await endCommission(doer, input);
  if (!ended.ok) return refused(commissionRefusalMessage(ended.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(ended.value.commissionNumber, 'end'));
});
