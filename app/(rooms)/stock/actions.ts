'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import { hangPictureRefusalMessage } from '@/lib/catalogue/rules/picture';
import { hangPicture } from '@/lib/catalogue/writes/hang-picture';
import {
  bringPictureInput,
  confirmListInput,
  correctStockInput,
  lookAgainInput,
  showListInput,
} from '@/lib/stock/input';
import { correctionRefusalMessage } from '@/lib/stock/rules/correction';
import { listBytesMost, stockListRefusalMessage } from '@/lib/stock/rules/list-refusals';
import { correctStock } from '@/lib/stock/writes/correct-stock';
import { confirmStockList, lookAgain, showStockList } from '@/lib/stock/writes/stock-list';

/** Looks at a stock list, and leads to what it would do. */
export const lookAtList = formAction('stock.load', showListInput, async (doer, input) => {
  const { requestKey, file } = input;
  if (file.size > listBytesMost) {
    const refusal = { code: 'file_too_large', bytesMost: listBytesMost } as const;
    return refused(stockListRefusalMessage(refusal));
  }
  const bytes = new Uint8Array(await file.arrayBuffer());
  const shown = await showStockList(doer, { requestKey, fileName: file.name, bytes });
  if (!shown.ok) {
    const message = stockListRefusalMessage(shown.refusal);
    return refused({ message, fields: { file: message } });
  }
  redirect(`/stock/list/${shown.value.stockListId}`);
});

/** Brings a list in, exactly as it was shown. */
export const confirmList = formAction('stock.load', confirmListInput, async (doer, input) => {
  const { leaveRefusedOut, ...list } = input;
  const yes = { ...list, leaveRefusedOut: leaveRefusedOut === 'yes' };
  const confirmed = await confirmStockList(doer, yes);
  revalidatePath('/stock', 'layout');
  if (!confirmed.ok) return refused(stockListRefusalMessage(confirmed.refusal));
  redirect(`/stock/list/${input.stockListId}`);
});

/** Looks at a list once more, against the stock as it is now. */
export const lookOnceMore = formAction('stock.load', lookAgainInput, async (doer, input) => {
  const shown = await lookAgain(doer, input);
  if (!shown.ok) return refused(stockListRefusalMessage(shown.refusal));
  revalidatePath(`/stock/list/${input.stockListId}`);
  redirect(`/stock/list/${input.stockListId}`);
});

/** Writes down that pieces came, broke, are missing or were counted. */
export const correctCount = formAction('stock.load', correctStockInput, async (doer, input) => {
  const corrected = await correctStock(doer, input);
  revalidatePath('/stock', 'layout');
  return answer(corrected, correctionRefusalMessage, ({ onHand }) => ({
    kind: 'done',
    message: `Written down: ${onHand} here now.`,
  }));
});

/** Hangs the picture of a piece. */
export const bringPicture = formAction('stock.load', bringPictureInput, async (doer, input) => {
  const { requestKey, skuId, picture } = input;
  const bytes = new Uint8Array(await picture.arrayBuffer());
  const hung = await hangPicture(doer, { requestKey, skuId, bytes });
  revalidatePath('/stock', 'layout');
  return answer(hung, hangPictureRefusalMessage, () => ({ kind: 'done', message: 'It hangs.' }));
});
