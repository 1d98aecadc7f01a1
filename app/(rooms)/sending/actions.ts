'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { answer, formAction, refused, type RefusalWords } from '@/app/form-action';
import { fieldWords } from '@/app/form-words';
import type { FormState } from '@/app/ui/form-state';
import { getGallery } from '@/lib/platform/settings';
import {
  boxInput,
  moveContentsInput,
  proposeBoxesInput,
  removeBoxInput,
  weighBoxesInput,
} from '@/lib/sending/input/boxes';
import { claimEventInput, claimInput } from '@/lib/sending/input/claims';
import { conditionInput, marksInput } from '@/lib/sending/input/condition';
import { changeShipmentInput, startShipmentInput } from '@/lib/sending/input/shipment';
import { wayInput } from '@/lib/sending/input/way';
import { sendingRefusalMessage, type AnySendingRefusal } from '@/lib/sending/rules/refusals';
import { proposeShipmentBoxes, putBox, removeBox, weighBoxes } from '@/lib/sending/writes/boxes';
import { noteClaim, openClaim } from '@/lib/sending/writes/claims';
import { reportCondition, setMarks } from '@/lib/sending/writes/condition';
import { moveContents } from '@/lib/sending/writes/move';
import { changeShipment, startShipment } from '@/lib/sending/writes/shipments';
import { noteWay } from '@/lib/sending/writes/way';

/** Begins a shipment, and leads to what goes into it. */
export const startAction = formAction('sending.do', startShipmentInput, async (doer, input) => {
  const started = await startShipment(doer, input);
  if (!started.ok) return refused(words(started.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${started.value.number}/pack`);
});

/** Changes how and where to a shipment goes. */
export const changeAction = formAction('sending.do', changeShipmentInput, async (doer, input) => {
  const changed = await changeShipment(doer, input);
  if (!changed.ok) return refused(words(changed.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${changed.value.number}`);
});

/** Has boxes proposed for a list of what is to go. */
export const proposeAction = formAction('sending.do', proposeBoxesInput, async (doer, input) => {
  const boxed = await proposeShipmentBoxes(doer, input);
  if (!boxed.ok) return refused(words(boxed.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${boxed.value.number}`);
});

const anyForm = z.record(z.string(), z.unknown());

/** Keeps a box; what a measure without a unit means is the gallery’s own. */
export const boxAction = formAction('sending.do', anyForm, async (doer, form) => {
  const { lengthUnit } = await getGallery();
  const read = boxInput(lengthUnit).safeParse(form, { error: fieldWords });
  if (!read.success) return faults(read.error.issues);
  const kept = await putBox(doer, read.data);
  if (!kept.ok) return refused(words(kept.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${kept.value.number}`);
});

/** Takes a box away. */
export const removeAction = formAction('sending.do', removeBoxInput, async (doer, input) => {
  const removed = await removeBox(doer, input);
  if (!removed.ok) return refused(words(removed.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${removed.value.number}`);
});

/** Puts some of a box into another. */
export const moveAction = formAction('sending.do', moveContentsInput, async (doer, input) => {
  const moved = await moveContents(doer, input);
  if (!moved.ok) return refused(words(moved.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${moved.value.number}`);
});

/** Writes down what the scale says. */
export const weighAction = formAction('sending.do', anyForm, async (doer, form) => {
  const { lengthUnit } = await getGallery();
  const read = weighBoxesInput(lengthUnit).safeParse(form, { error: fieldWords });
  if (!read.success) return faults(read.error.issues);
  const weighed = await weighBoxes(doer, read.data);
  revalidatePath('/', 'layout');
  return answer(weighed, words, () => ({ kind: 'done', message: 'The weights are kept.' }));
});

/** Writes down what became of a shipment. */
export const wayAction = formAction('sending.do', wayInput, async (doer, input) => {
  const noted = await noteWay(doer, input);
  if (!noted.ok) return refused(words(noted.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${noted.value.number}`);
});

/** Writes down how a piece looks, and leads to its pictures. */
export const reportAction = formAction('sending.do', conditionInput, async (doer, input) => {
  const reported = await reportCondition(doer, input);
  if (!reported.ok) return refused(words(reported.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${reported.value.number}/condition/${reported.value.reportId}`);
});

/** Sets marks on a picture. */
export const marksAction = formAction('sending.do', marksInput, async (doer, input) => {
  const marked = await setMarks(doer, input);
  if (!marked.ok) return refused(words(marked.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${marked.value.number}/condition/${marked.value.reportId}`);
});

/** Writes damage down, and leads to its claim. */
export const claimAction = formAction('sending.do', claimInput, async (doer, input) => {
  const claimed = await openClaim(doer, input);
  if (!claimed.ok) return refused(words(claimed.refusal));
  revalidatePath('/', 'layout');
  redirect(`/sending/${claimed.value.number}/claim/${claimed.value.claimNumber}`);
});

/** Writes down what came of a claim. */
export const claimEventAction = formAction('sending.do', claimEventInput, async (doer, input) => {
  const noted = await noteClaim(doer, input);
  revalidatePath('/', 'layout');
  return answer(noted, words, () => ({ kind: 'done', message: 'It is written down.' }));
});

function faults(issues: readonly z.core.$ZodIssue[]): FormState {
  const fields: Record<string, string> = {};
  for (const { path, message } of issues) fields[path.join('.')] ??= message;
  return refused({ message: 'Not yet: please look again at what is marked below.', fields });
}

const fieldOf: Partial<Record<AnySendingRefusal['code'], string>> = {
  ...{
    nobody_to_send_to: 'toName',
    nowhere_to_send_to: 'toAddress',
    no_such_terms: 'carrierRuleId',
  },
  ...{ line_not_read: 'pieces', nothing_to_go: 'pieces', too_much_to_go: 'pieces' },
  ...{ content_not_read: 'contents', nothing_in_it: 'contents', part_elsewhere: 'contents' },
  ...{ day_to_come: 'on', before_it: 'on', sent_before_sold: 'on', drawing_not_kept: 'drawing' },
  ...{ claim_day_to_come: 'on', before_found: 'on', paid_nothing: 'amount' },
  ...{ amount_for_nothing: 'amount', found_before_sent: 'foundOn', picture_not_kept: 'pictures' },
  ...{ too_many_pictures: 'pictures' },
};

function words(refusal: AnySendingRefusal): RefusalWords {
  const message = sendingRefusalMessage(refusal);
  const field = fieldOf[refusal.code];
  return field === undefined ? message : { message, fields: { [field]: message } };
}
