'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import {
  noteAnswerInput,
  sendProposalInput,
  writeProposalInput,
} from '@/lib/commissions/input/proposal/proposal';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { noteAnswer, sendProposal } from '@/lib/commissions/writes/proposal/answer';
import { writeProposal } from '@/lib/commissions/writes/proposal/write';
import { sheetHref } from '../../sheet-href';

/** Keeps a proposal as a new version. */
export const keep = formAction('commissions.propose', writeProposalInput, async (doer, input) => {
  const written = await writeProposal(doer, input);
  if (!written.ok) return refused(commissionRefusalMessage(written.refusal));
  revalidatePath('/', 'layout');
  redirect(`/commissions/${written.value.commissionNumber}/proposal`);
});

/** Notes that a proposal went out. */
export const send = formAction('commissions.propose', sendProposalInput, async (doer, input) => {
  const sent = await sendProposal(doer, input);
  if (!sent.ok) return refused(commissionRefusalMessage(sent.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(sent.value.commissionNumber, 'proposal-sent'));
});

/** Writes down what the collector said to a proposal. */
export const note = formAction('commissions.propose', noteAnswerInput, async (doer, input) => {
  const answered = await noteAnswer(doer, input);
  if (!answered.ok) return refused(commissionRefusalMessage(answered.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(answered.value.commissionNumber, 'proposal-answered'));
});
