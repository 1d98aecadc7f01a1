'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import {
  beginCountInput,
  bookCountInput,
  leaveCountInput,
  scanInput,
  setCountedInput,
  unseeNumberInput,
} from '@/lib/stock/input/counts';
import { countRefusalMessage } from '@/lib/stock/rules/moves/count-refusals';
import { beginCount, bookCount, leaveCount } from '@/lib/stock/writes/count';
import { scanInCount, setCounted, unseeNumber, type ScannedAnswer } from '@/lib/stock/writes/scan';

/** Begins a count, and leads to it. */
export const begin = formAction('stock.move', beginCountInput, async (doer, input) => {
  const begun = await beginCount(doer, input);
  if (!begun.ok) {
    const message = countRefusalMessage(begun.refusal);
    return refused({ message, fields: { placeId: message } });
  }
  revalidatePath('/stock', 'layout');
  redirect(`/stock/counts/${begun.value.number}`);
});

/** Counts one more of what was scanned. */
export const scan = formAction('stock.move', scanInput, async (doer, input) => {
  const scanned = await scanInCount(doer, input);
  revalidatePath('/stock/counts', 'layout');
  return answer(
    scanned,
    (refusal) => {
      const message = countRefusalMessage(refusal);
      return { message, fields: { code: message } };
    },
    done,
  );
});

/** Says how many of a piece there are in all. */
export const setOne = formAction('stock.move', setCountedInput, async (doer, input) => {
  const set = await setCounted(doer, input);
  revalidatePath('/stock/counts', 'layout');
  return answer(set, countRefusalMessage, done);
});

/** Takes back that a number was counted. */
export const unsee = formAction('stock.move', unseeNumberInput, async (doer, input) => {
  const taken = await unseeNumber(doer, input);
  revalidatePath('/stock/counts', 'layout');
  return answer(taken, countRefusalMessage, done);
});

/** Books a count whole. */
export const book = formAction('stock.move', bookCountInput, async (doer, input) => {
  const booked = await bookCount(doer, input);
  revalidatePath('/stock', 'layout');
  if (booked.ok) return { kind: 'done', message: 'It is booked.' };
  const message = countRefusalMessage(booked.refusal);
  return refused(message);
});

/** Leaves a count; nothing of it is booked. */
export const leave = formAction('stock.move', leaveCountInput, async (doer, input) => {
  const left = await leaveCount(doer, input);
  revalidatePath('/stock', 'layout');
  return answer(left, countRefusalMessage, () => ({ kind: 'done', message: 'It was left.' }));
});

function done({ title, sku, counted }: ScannedAnswer) {
  return { kind: 'done' as const, message: `${title} (${sku}): ${counted} counted.` };
}
