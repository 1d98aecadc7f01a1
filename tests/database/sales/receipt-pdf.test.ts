import { beforeAll, expect, test } from 'vitest';
import { receiptPdf } from '@/lib/documents/receipt';
import { getGallery } from '@/lib/platform/settings';
import { findReceipt, type Receipt } from '@/lib/sales/reads/receipts';
import { startAfresh } from '@/tests/helpers/database';
import { aPieceHere, aSale, doing, openGallery, sellNow } from './open-gallery';

let receipt: Receipt;

beforeAll(async () => {
  await startAfresh();
  const gallery = await openGallery();
  const lines = [];
  for (const place of Array.from({ length: 24 }).keys()) {
    const title = place === 3 ? 'A very long title of a work that runs on over two lines' : '';
    const names = { sku: `AB-${place + 10}`, title: title || `Study ${place + 1}, Dvořák’s tern` };
    const piece = await aPieceHere(gallery, { ...names, priceCents: 4_200n, here: 3 });
    lines.push({ piece, quantity: (place % 3) + 1 });
  }
  const sold = await sellNow(doing(gallery.clerk), aSale(lines));
  const found = sold.ok ? await findReceipt(gallery.clerk, sold.value.number) : null;
  if (!found) throw new Error('What was sold has its receipt.');
  receipt = found;
});

function pagesOf(bytes: Uint8Array): number {
  return (
    Buffer.from(bytes)
      .toString('latin1')
      .match(/\/Type \/Page\b(?!s)/g)?.length ?? 0
  );
}

test('a long receipt is a PDF of several pages, with its own type in it', async () => {
  const bytes = await receiptPdf(receipt, await getGallery(), 'whole');
  const text = Buffer.from(bytes).toString('latin1');
  expect(text.startsWith('%PDF-')).toBe(true);
  expect(text.match(/\/FontFile2/g)?.length).toBe(4);
  expect(text).toContain('/Lang (en-US)');
  expect(pagesOf(bytes)).toBeGreaterThan(1);
});

test('the gift receipt is shorter by its sums, and is another paper', async () => {
  const gallery = await getGallery();
  const gift = await receiptPdf(receipt, gallery, 'gift');
  const whole = await receiptPdf(receipt, gallery, 'whole');
  expect(gift.length).toBeLessThan(whole.length);
  expect(pagesOf(gift)).toBeGreaterThan(0);
});
