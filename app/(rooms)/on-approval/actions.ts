'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { counterRefusalMessage } from '@/lib/counter/rules/refusals';
import { putOnSlip } from '@/lib/counter/writes';
import { backInput, giveInput } from '@/lib/holds/input/approval';
import { approvalRefusalMessage, type AnyApprovalRefusal } from '@/lib/holds/rules/approval';
import { takeBackFromApproval, type CameBack } from '@/lib/holds/writes/approval-back';
import { giveOnApproval } from '@/lib/holds/writes/approvals';
import type { Doer } from '@/lib/access/rules';
import { getGallery } from '@/lib/platform/settings';

/** Gives pieces home to be tried, and opens the slip. */
export const give = formAction('stock.hold', giveInput, async (doer, input) => {
  const given = await giveOnApproval(doer, input);
  revalidateApprovals();
  if (!given.ok) return refused(await wordsFor(given.refusal));
  redirect(`/on-approval/${given.value.number}`);
});

/** Takes pieces back that were tried; what is bought goes onto a slip at once. */
export const takeBack = formAction('stock.hold', backInput, async (doer, input) => {
  const came = await takeBackFromApproval(doer, input);
  revalidateApprovals();
  if (!came.ok) return refused(await wordsFor(came.refusal));
  if (came.value.bought.length > 0) return ontoSlip(doer, came.value);
  return { kind: 'done', message: 'They are back at the counter’s place.' };
});

/** The holds made by it keep the pieces until the slip is paid; its key is that of the hold. */
async function ontoSlip(doer: Doer, { bought, collectorId }: CameBack) {
  const line = bought.map((each) => ({ kind: 'piece' as const, ...each }));
  const requestKey = bought[0]?.holdIds[0] ?? '';
  const put = await putOnSlip(doer, { requestKey, slipId: null, line, collectorId });
  if (!put.ok) return refused(counterRefusalMessage(put.refusal, (await getGallery()).timeZone));
  redirect(`/counter?slip=${put.value.slipId}`);
}

function revalidateApprovals(): void {
  revalidatePath('/on-approval', 'layout');
  revalidatePath('/holds', 'layout');
  revalidatePath('/stock', 'layout');
  revalidatePath('/');
}

async function wordsFor(refusal: AnyApprovalRefusal) {
  const message = approvalRefusalMessage(refusal, (await getGallery()).timeZone);
  const field = fieldOf[refusal.code];
  return field ? { message, fields: { [field]: message } } : message;
}

const fieldOf: Partial<Record<AnyApprovalRefusal['code'], string>> = {
  due_has_passed: 'dueOn',
  due_too_far: 'dueOn',
  picture_not_kept: 'pictures',
};
