'use server';

import { headers } from 'next/headers';
import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import {
  offerChangeInput,
  signChangeOrderInput,
  withdrawChangeInput,
} from '@/lib/commissions/input/agreement/agreement';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { offerChange, signChangeOrder } from '@/lib/commissions/writes/agreement/change';
import { withdrawChange } from '@/lib/commissions/writes/agreement/withdraw';
import { deviceWords } from '@/lib/access/rules/device';
import { sheetHref } from '../../sheet-href';

/** Writes a change order down. */
export const offer = formAction('commissions.agree', offerChangeInput, async (doer, input) => {
  const offered = await offerChange(doer, input);
  if (!offered.ok) return refused(commissionRefusalMessage(offered.refusal));
  revalidatePath('/', 'layout');
  redirect(`/commissions/${offered.value.commissionNumber}/change/${offered.value.number}`);
});

/** Signs a change order before somebody of the gallery. */
export const sign = formAction('commissions.agree', signChangeOrderInput, async (doer, input) => {
  const device = deviceWords((await headers()).get('user-agent') ?? '');
  const signed = await signChangeOrder(doer, input, device);
  if (!signed.ok) return refused(commissionRefusalMessage(signed.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(signed.value.commissionNumber, 'signed'));
});

/** Withdraws a change order that was not signed. */
export const withdraw = formAction(
  'commissions.agree',
  withdrawChangeInput,
  async (doer, input) => {
    const withdrawn = await withdrawChange(doer, input);
    if (!withdrawn.ok) return refused(commissionRefusalMessage(withdrawn.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(withdrawn.value.commissionNumber, 'withdrawn'));
  },
);
