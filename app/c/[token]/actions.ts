'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { refused } from '@/app/form-action';
import { pageAction } from '@/app/page-action';
import {
  signAgreementInput,
  signChangeOrderInput,
} from '@/lib/commissions/input/agreement/agreement';
import { askForChangesInput, signYesInput } from '@/lib/commissions/input/colours/showing';
import { chooseDayInput } from '@/lib/installation/input/offers/days';
import { answerProposalInput } from '@/lib/commissions/input/proposal/proposal';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { signChangeOrder } from '@/lib/commissions/writes/agreement/change';
import { signAgreement } from '@/lib/commissions/writes/agreement/sign';
import { signYes } from '@/lib/commissions/writes/colours/approve';
import { askForChanges } from '@/lib/commissions/writes/colours/changes';
import { offersRefusalMessage } from '@/lib/installation/rules/offers/refusals';
import { chooseDay } from '@/lib/installation/writes/offers/choose-day';
import { answerProposal } from '@/lib/commissions/writes/proposal/answer';
import { readDevice } from './device';

/** The collector chooses one of the offered days. */
export const chooseOneDay = pageAction(chooseDayInput, async ({ doer, token }, input) => {
  const chosen = await chooseDay(doer, input);
  if (!chosen.ok) return refused(offersRefusalMessage(chosen.refusal));
  revalidatePath('/', 'layout');
  redirect(`/c/${token}?done=day`);
});

/** The collector answers the proposal, and signs. */
export const sayToProposal = pageAction(answerProposalInput, async ({ doer, token }, input) => {
  const answered = await answerProposal(doer, input, await readDevice());
  if (!answered.ok) return refused(commissionRefusalMessage(answered.refusal));
  revalidatePath('/', 'layout');
  redirect(`/c/${token}/proposal`);
});

/** The collector signs the agreement; where, is never theirs to say: it is their own page. */
export const signTheAgreement = pageAction(
  signAgreementInput.omit({ signedWhere: true, cancelNotice: true }),
  async ({ doer, token }, input) => {
    const here = { ...input, signedWhere: 'on_their_page', cancelNotice: 'no' } as const;
    const signed = await signAgreement(doer, here, await readDevice());
    if (!signed.ok) return refused(commissionRefusalMessage(signed.refusal));
    revalidatePath('/', 'layout');
    redirect(`/c/${token}/agreement`);
  },
);

/** The collector signs a change order. */
export const signTheChange = pageAction(signChangeOrderInput, async ({ doer, token }, input) => {
  const signed = await signChangeOrder(doer, input, await readDevice());
  if (!signed.ok) return refused(commissionRefusalMessage(signed.refusal));
  revalidatePath('/', 'layout');
  redirect(`/c/${token}?done=signed`);
});

/** The collector says yes to a sketch or a colour, and signs. */
export const sayYes = pageAction(signYesInput, async ({ doer, token }, input) => {
  const said = await signYes(doer, input, await readDevice());
  if (!said.ok) return refused(commissionRefusalMessage(said.refusal));
  revalidatePath('/', 'layout');
  redirect(`/c/${token}?done=yes`);
});

/** The collector asks for changes to what was shown. */
export const sayChanges = pageAction(askForChangesInput, async ({ doer, token }, input) => {
  const asked = await askForChanges(doer, input, await readDevice());
  if (!asked.ok) return refused(commissionRefusalMessage(asked.refusal));
  revalidatePath('/', 'layout');
  redirect(`/c/${token}?done=changes`);
});
