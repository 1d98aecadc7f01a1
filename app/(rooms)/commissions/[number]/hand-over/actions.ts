'use server';

import { headers } from 'next/headers';
import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { deviceWords } from '@/lib/access/rules/device';
import { signHandOverInput } from '@/lib/commissions/input/agreement/hand-over';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { handOver } from '@/lib/commissions/writes/hand-over';
import { sheetHref } from '../../sheet-href';

/** Hands the piece over, signed by whoever takes it. */
export const giveItOver = formAction(
  'commissions.hand_over',
  signHandOverInput,
  async (doer, input) => {
    const device = deviceWords((await headers()).get('user-agent') ?? '');
    const handed = await handOver(doer, input, device);
    if (!handed.ok) return refused(commissionRefusalMessage(handed.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(handed.value.commissionNumber, 'hand-over'));
  },
);
