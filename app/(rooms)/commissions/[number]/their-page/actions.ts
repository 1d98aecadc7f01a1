'use server';

import { revalidatePath } from 'next/cache';
import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { originOf } from '@/app/origin';
import { sendLetterInput } from '@/lib/commissions/input/page/letter';
import { makeLinkInput, withdrawLinkInput } from '@/lib/commissions/input/page/link';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { sendLetter } from '@/lib/commissions/writes/page/letter';
import { makeLink, withdrawLink } from '@/lib/commissions/writes/page/link';
import { sheetHref } from '../../sheet-href';

/** Makes an address of the collector's page; it is shown in the answer, and never again. */
export const openTheirPage = formAction(
  'commissions.take_money',
  makeLinkInput,
  async (doer, input) => {
    const made = await makeLink(doer, input);
    if (!made.ok) return refused(commissionRefusalMessage(made.refusal));
    revalidatePath('/', 'layout');
    const { token } = made.value;
    if (token === null) {
      return { kind: 'done', message: 'It was made before, and shown then. Make another one.' };
    }
    const href = `${originOf(await headers())}/c/${token}`;
    return { kind: 'done', message: 'It is made, and shown only this once.', href };
  },
);

/** Withdraws an address for good. */
export const shutTheirPage = formAction(
  'commissions.take_money',
  withdrawLinkInput,
  async (doer, input) => {
    const shut = await withdrawLink(doer, input);
    if (!shut.ok) return refused(commissionRefusalMessage(shut.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(shut.value.commissionNumber, 'shut'));
  },
);

/** Sends a letter over the gallery's mail server, and says what became of it. */
export const sendTheirLetter = formAction(
  'commissions.take_money',
  sendLetterInput,
  async (doer, input) => {
    const sent = await sendLetter(doer, input, { origin: originOf(await headers()) });
    if (!sent.ok) return refused(commissionRefusalMessage(sent.refusal));
    revalidatePath('/', 'layout');
    const { failure, isOnItsWay } = sent.value;
    if (failure) {
      return refused(`The letter is written down, and did not go out. ${failure}`);
    }
    const message = isOnItsWay
      ? 'It was handed over before; no word has come back yet.'
      : `The letter to ${input.toAddress} has gone out.`;
    return { kind: 'done', message };
  },
);
