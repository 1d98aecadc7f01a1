'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import {
  beginWithGalleryInput,
  changeTermsInput,
  consignInput,
  endWithGalleryInput,
  reportSoldInput,
} from '@/lib/consignment/input';
import {
  consigneeRefusalMessage,
  reportRefusalMessage,
  sendRefusalMessage,
  type ReportRefusal,
} from '@/lib/consignment/rules/refusals';
import { beginWithGallery, changeTerms, endWithGallery } from '@/lib/consignment/writes';
import { reportSold } from '@/lib/consignment/writes/report';
import { bringBackFromGallery, sendToGallery } from '@/lib/consignment/writes/send';
import type { NotAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { getGallery } from '@/lib/platform/settings';
import { settleAccountInput } from '@/lib/sales/input/settling';
import { settlementRefusalMessage, type SettlementRefusal } from '@/lib/sales/rules/settling';
import { settleAccount } from '@/lib/sales/writes/settle-account';

/** Begins with another gallery, and leads to its sheet. */
export const begin = formAction('outside.keep', beginWithGalleryInput, async (doer, input) => {
  const begun = await beginWithGallery(doer, input);
  if (!begun.ok) {
    const message = consigneeRefusalMessage(begun.refusal);
    return refused({ message, fields: { collectorId: message } });
  }
  revalidatePath('/galleries', 'layout');
  redirect(`/galleries/${begun.value.consigneeId}`);
});

/** Changes what was agreed. */
export const changeAgreed = formAction('outside.keep', changeTermsInput, async (doer, input) => {
  const changed = await changeTerms(doer, input);
  revalidatePath('/galleries', 'layout');
  const done = { kind: 'done', message: 'Written down.' } as const;
  return answer(changed, consigneeRefusalMessage, () => done);
});

/** Ends it with another gallery. */
export const endIt = formAction('outside.keep', endWithGalleryInput, async (doer, input) => {
  const { timeZone } = await getGallery();
  const ended = await endWithGallery(doer, { ...input, endedOn: dayOf(doer.at, timeZone) });
  revalidatePath('/galleries', 'layout');
  return answer(ended, consigneeRefusalMessage, () => ({ kind: 'done', message: 'It is ended.' }));
});

/** Sends what lies ready, and leads to the note. */
export const send = formAction('outside.keep', consignInput, async (doer, input) => {
  const sent = await sendToGallery(doer, input);
  revalidatePath('/galleries', 'layout');
  if (!sent.ok) return refused(sendRefusalMessage(sent.refusal));
  redirect(`/galleries/notes/${sent.value.number}`);
});

/** Takes back what lies ready, and leads to the note. */
export const takeBack = formAction('outside.keep', consignInput, async (doer, input) => {
  const taken = await bringBackFromGallery(doer, input);
  revalidatePath('/galleries', 'layout');
  if (!taken.ok) return refused(sendRefusalMessage(taken.refusal));
  redirect(`/galleries/notes/${taken.value.number}`);
});

/** Writes down what they sold, and leads to the statement. */
export const report = formAction('outside.keep', reportSoldInput, async (doer, input) => {
  const reported = await reportSold(doer, input);
  revalidatePath('/galleries', 'layout');
  if (!reported.ok) return refused(reportWords(reported.refusal));
  redirect(`/galleries/statements/${reported.value.number}`);
});

/** Takes money for a statement. */
export const receive = formAction('outside.keep', settleAccountInput, async (doer, input) => {
  const received = await settleAccount(doer, input);
  revalidatePath('/galleries', 'layout');
  const done = { kind: 'done', message: 'Received and written down.' } as const;
  return answer(received, receiveWords, () => done);
});

type KeyUsed = { code: 'key_used_for_something_else' };

function receiveWords(refusal: SettlementRefusal | NotAllowed | KeyUsed) {
  if (refusal.code === 'not_allowed' || refusal.code === 'key_used_for_something_else') {
    return reportRefusalMessage(refusal);
  }
  return settlementRefusalMessage(refusal);
}

/** A fault of one line is told at that line's own field. */
function reportWords(refusal: ReportRefusal) {
  const message = reportRefusalMessage(refusal);
  if ('place' in refusal) {
    const field = fieldOf[refusal.code];
    return { message, fields: { [`lines.${refusal.place}.${field}`]: message } };
  }
  const isOfDays = refusal.code === 'not_yet' || refusal.code === 'days_turned';
  return { message, fields: isOfDays ? { untilOn: message } : {} };
}

const fieldOf = {
  sold_outside: 'soldOn',
  discount_above_price: 'discount',
  discount_needs_bearer: 'borneBy',
  discount_above_ours: 'discount',
  not_with_them: 'quantity',
  held_there: 'quantity',
  number_needed: 'quantity',
  number_not_with_them: 'quantity',
  number_twice: 'quantity',
} as const;
