'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import { counterRefusalMessage } from '@/lib/counter/rules/refusals';
import { putOnSlip } from '@/lib/counter/writes';
import { formatInstant } from '@/lib/dates/rules';
import {
  collectedInput,
  holdInput,
  holdLongerInput,
  holdTouchInput,
  waitingTouchInput,
  waitInput,
} from '@/lib/holds/input';
import { findHoldById } from '@/lib/holds/reads/hold-list';
import { holdRefusalMessage, type AnyHoldRefusal } from '@/lib/holds/rules/refusals';
import { collectRefusalMessage } from '@/lib/holds/rules/still-here';
import { noteCollected } from '@/lib/holds/writes/collect';
import { holdForSomebody, holdLonger, letGo, noteCall } from '@/lib/holds/writes/keep';
import { holdForWaiting, noteTold, waitForPiece, waitNoLonger } from '@/lib/holds/writes/waiting';
import type { Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';

/** Holds a piece for somebody, and opens the page of the hold. */
export const hold = formAction('stock.hold', holdInput, async (doer, input) => {
  const held = await holdForSomebody(doer, input);
  revalidateHolds();
  if (!held.ok) return refused(await wordsFor(held.refusal));
  redirect(`/holds/${held.value.number}`);
});

/** Notes that somebody was called about the end of their hold. */
export const called = formAction('stock.hold', holdTouchInput, async (doer, input) => {
  const noted = await noteCall(doer, input);
  return told(noted, () => 'Noted: called just now.');
});

/** Lets a hold go, and names who is to be called next. */
export const release = formAction('stock.hold', holdTouchInput, async (doer, input) => {
  const gone = await letGo(doer, input);
  return told(gone, ({ number, next }) =>
    next
      ? `Hold ${number} is let go. Call ${next.forWhom} now${next.phone ? `, ${next.phone}` : ''}.`
      : `Hold ${number} is let go. The piece is free.`,
  );
});

/** Makes a hold longer. */
export const prolong = formAction('stock.hold', holdLongerInput, async (doer, input) => {
  const longer = await holdLonger(doer, input);
  return told(longer, ({ number }) => `Hold ${number} is longer now.`);
});

/** Puts a held piece on a slip at the counter. */
export const toSlip = formAction('counter.sell', holdTouchInput, async (doer, input) => {
  const { requestKey, holdId } = input;
  const { timeZone } = await getGallery();
  const held = await findHoldById(doer.actor, holdId, doer.at);
  if (!held) return refused(holdRefusalMessage({ code: 'unknown_hold' }, timeZone));
  if (held.endedAt) return refused(`This hold ended ${formatInstant(held.endedAt, timeZone)}.`);
  const { skuId, quantity, editionNumber, collectorId } = held;
  const numbers = editionNumber === null ? [] : [editionNumber];
  const line = { kind: 'piece' as const, skuId, quantity, numbers, holdIds: [holdId] };
  const put = await putOnSlip(doer, { requestKey, slipId: null, line, collectorId });
  if (!put.ok) return refused(counterRefusalMessage(put.refusal, timeZone));
  redirect(`/counter?slip=${put.value.slipId}`);
});

/** Puts somebody down as second in line, or to be told when a piece is back. */
export const wait = formAction('stock.hold', waitInput, async (doer, input) => {
  const waits = await waitForPiece(doer, input);
  revalidateHolds();
  if (!waits.ok) return refused(await wordsFor(waits.refusal));
  redirect('/holds#waiting');
});

/** Notes that somebody who waits was told. */
export const tell = formAction('stock.hold', waitingTouchInput, async (doer, input) => {
  return told(await noteTold(doer, input), ({ forWhom }) => `Noted: ${forWhom} was told.`);
});

/** Makes the hold of somebody who waited. */
export const holdForNext = formAction('stock.hold', waitingTouchInput, async (doer, input) => {
  const held = await holdForWaiting(doer, input);
  revalidateHolds();
  if (!held.ok) return refused(await wordsFor(held.refusal));
  redirect(`/holds/${held.value.number}`);
});

/** Takes somebody off the list of those who wait. */
export const stopWaiting = formAction('stock.hold', waitingTouchInput, async (doer, input) => {
  const done = await waitNoLonger(doer, input);
  return told(done, ({ forWhom }) => `${forWhom} waits no longer.`);
});

/** Notes that a sold piece was collected. */
export const collected = formAction('stock.hold', collectedInput, async (doer, input) => {
  const done = await noteCollected(doer, input);
  revalidateHolds();
  const { timeZone } = await getGallery();
  const words = (refusal: Parameters<typeof collectRefusalMessage>[0]) =>
    collectRefusalMessage(refusal, timeZone);
  return answer(done, words, ({ title }) => ({ kind: 'done', message: `${title} was collected.` }));
});

async function told<Value>(done: Result<Value, AnyHoldRefusal>, words: (value: Value) => string) {
  revalidateHolds();
  const { timeZone } = await getGallery();
  const no = (refusal: AnyHoldRefusal) => holdRefusalMessage(refusal, timeZone);
  return answer(done, no, (value) => ({ kind: 'done', message: words(value) }));
}

function revalidateHolds(): void {
  revalidatePath('/holds', 'layout');
  revalidatePath('/stock', 'layout');
  revalidatePath('/');
}

async function wordsFor(refusal: AnyHoldRefusal) {
  const { timeZone } = await getGallery();
  const message = holdRefusalMessage(refusal, timeZone);
  const field = fieldOf[refusal.code];
  return field ? { message, fields: { [field]: message } } : message;
}

const fieldOf: Partial<Record<AnyHoldRefusal['code'], string>> = {
  until_has_passed: 'untilOn',
  until_too_far: 'untilOn',
  not_enough_free: 'quantity',
  number_wanted: 'editionNumber',
  number_not_here: 'editionNumber',
  number_is_held: 'editionNumber',
};
