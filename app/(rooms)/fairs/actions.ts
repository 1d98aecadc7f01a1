'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused, type RefusalWords } from '@/app/form-action';
import { notAllowedMessage } from '@/lib/access/rules';
import { countFairInput, fairPriceInput, keepFairInput, takeToFairInput } from '@/lib/fairs/input';
import { fairRefusalMessage, type FairRefusal } from '@/lib/fairs/rules';
import { keepFair, setFairPrice, type FairAnswer } from '@/lib/fairs/writes';
import { countFairBack } from '@/lib/fairs/writes/count';
import { takeToFair } from '@/lib/fairs/writes/take';

type Refusal = Extract<FairAnswer<unknown>, { ok: false }>['refusal'];

/** Writes a fair down or changes it, and leads to it. */
export const keepFairAction = formAction('outside.keep', keepFairInput, async (doer, input) => {
  const kept = await keepFair(doer, input);
  if (!kept.ok) return refused(words(kept.refusal));
  revalidatePath('/fairs', 'layout');
  redirect(`/fairs/${kept.value.number}`);
});

/** Takes pieces to a fair, and stays on the page for the next ones. */
export const takeAction = formAction('outside.keep', takeToFairInput, async (doer, input) => {
  const taken = await takeToFair(doer, input);
  revalidatePath('/fairs', 'layout');
  return answer(taken, words, ({ pieces, transferNumber }) => ({
    kind: 'done',
    message: `${pieces} ${pieces === 1 ? 'piece goes' : 'pieces go'} along (move ${transferNumber}).`,
  }));
});

/** Sets what a piece costs at a fair. */
export const priceAction = formAction('outside.keep', fairPriceInput, async (doer, input) => {
  const set = await setFairPrice(doer, input);
  revalidatePath('/fairs', 'layout');
  return answer(set, words, () => ({
    kind: 'done',
    message: input.price === null ? 'It costs there what it costs at home.' : 'The price is set.',
  }));
});

/** Counts a fair back in. */
export const countAction = formAction('outside.keep', countFairInput, async (doer, input) => {
  const counted = await countFairBack(doer, input);
  revalidatePath('/fairs', 'layout');
  return answer(counted, words, ({ words: message }) => ({ kind: 'done', message }));
});

function words(refusal: Refusal): RefusalWords {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'key_used_for_something_else') {
    return 'This page was sent before with something else in it. Load it again, please.';
  }
  const message = fairRefusalMessage(refusal);
  const field = fieldOf(refusal);
  return field === null ? message : { message, fields: { [field]: message } };
}

const pieceCodes = ['unknown_code', 'which_number', 'number_elsewhere', 'not_enough'];

function fieldOf(refusal: FairRefusal): string | null {
  if (pieceCodes.includes(refusal.code)) return 'pieces';
  if (refusal.code === 'counted_more') return `back.${refusal.row}`;
  if (refusal.code === 'fair_is_known') return 'name';
  return refusal.code === 'unknown_tax_place' ? 'taxPlaceId' : null;
}
