'use server';

import { headers } from 'next/headers';
import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { signAgreementInput } from '@/lib/commissions/input/agreement/agreement';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { signAgreement } from '@/lib/commissions/writes/agreement/sign';
import { deviceWords } from '@/lib/access/rules/device';
import { sheetHref } from '../../sheet-href';

/** Signs the agreement before somebody of the gallery. */
export const sign = formAction('commissions.agree', signAgreementInput, async (doer, input) => {
  const device = deviceWords((await headers()).get('user-agent') ?? '');
  const signed = await signAgreement(doer, input, device);
  if (!signed.ok) return refused(commissionRefusalMessage(signed.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(signed.value.commissionNumber, 'signed'));
});
