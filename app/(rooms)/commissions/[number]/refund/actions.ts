'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { giveBackInput, withdrawAskInput } from '@/lib/commissions/input/money';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { withdrawAsk } from '@/lib/commissions/writes/money/ask';
import { giveBack } from '@/lib/commissions/writes/money/refund';
import { sheetHref } from '../../sheet-href';

/** Gives money back of a payment. */
export const giveMoneyBack = formAction(
  'commissions.give_back',
  giveBackInput,
  async (doer, input) => {
    const given = await giveBack(doer, input);
    if (!given.ok) return refused(commissionRefusalMessage(given.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(given.value.commissionNumber, 'refund'));
  },
);

/** Takes back what was asked for by mistake. */
export const takeAskBack = formAction(
  'commissions.take_money',
  withdrawAskInput,
  async (doer, input) => {
    const withdrawn = await withdrawAsk(doer, input);
    if (!withdrawn.ok) return refused(commissionRefusalMessage(withdrawn.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(withdrawn.value.commissionNumber, 'ask-back'));
  },
);
