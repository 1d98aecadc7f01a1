'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { after } from 'next/server';
import { answer, formAction, refused } from '@/app/form-action';
import { hangPictureRefusalMessage } from '@/lib/catalogue/rules/picture';
import { hangPicture } from '@/lib/catalogue/writes/hang-picture';
import { dataRefusalMessage } from '@/lib/data/rules/refusals';
import { beginStockList, carryStockList } from '@/lib/data/writes/carry-stock-list';
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
import { lookAgain, showStockList } from '@/lib/stock/writes/stock-list';

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

/** Begins to bring a list in, exactly as it was shown; its page tells how far it is. */
export const confirmList = formAction('stock.load', confirmListInput, async (doer, input) => {
  const { requestKey, stockListId, planSha256, refusedLines, leaveRefusedOut } = input;
  if (refusedLines > 0 && leaveRefusedOut === undefined) {
    return refused(stockListRefusalMessage({ code: 'lines_refused', lines: refusedLines }));
  }
  const begun = await beginStockList(doer, { requestKey, stockListId });
  if (!begun.ok) return refused(dataRefusalMessage(begun.refusal));
  const yes = { stockListId, planSha256, leaveRefusedOut: leaveRefusedOut === 'yes' };
  after(async () => {
    await carryStockList(doer, { ...begun.value, ...yes });
  });
  redirect(`/data/loads/${begun.value.loadId}`);
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
