import { randomUUID } from 'node:crypto';
import sharp from 'sharp';
import { beforeEach, describe, expect, test } from 'vitest';
import { receiptPdf } from '@/lib/documents/receipt';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { findReceipts, listProofMissing } from '@/lib/sales/reads/receipts-of-day';
import { findReceipt } from '@/lib/sales/reads/receipts';
import { proofRefusalMessage } from '@/lib/sales/rules/proof';
import { keepProof } from '@/lib/sales/writes/keep-proof';
import { startAfresh } from '@/tests/helpers/database';
import { aPieceHere, doing, noon, openGallery, type OpenGallery } from '../sales/open-gallery';
import { pieceOf, sell, type Sold } from './sell';

type Slip = Parameters<typeof keepProof>[1];

let gallery: OpenGallery;
let sent: Sold;
let taken: Sold;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const names = { sku: 'SF-08-MW', title: 'Sword Fern' };
  const fern = await aPieceHere(gallery, { ...names, priceCents: 10_000n, here: 5 });
  const away = await db().taxPlace.create({ data: { name: 'Sent to Ferrow', state: 'FW' } });
  const { id: collectorId } = await db().collector.create({
    data: { name: 'Rook Halloran', createdAt: noon },
  });
  taken = await sell(gallery, [pieceOf(fern, 1, { title: 'Sword Fern' })]);
  const discounts = [
    { kind: 'line', reason: 'a scuffed box', amountCents: 500n, givenById: gallery.owner.id },
  ] as const;
  sent = await sell(
    gallery,
    [pieceOf(fern, 1, { title: 'Sword Fern', discounts, taxable: false })],
    [{ kind: 'card' }],
    {
      ...{ delivery: 'sent', deliverTo: '3 Reach Road, Ferrow', taxPlaceId: away.id, collectorId },
      ...{ exemptWhy: 'sent to another state', giftTo: 'Sabine', giftWords: 'With love' },
    },
  );
});

function slip(over: Partial<Slip> = {}): Slip {
  return {
    ...{ requestKey: randomUUID(), saleNumber: sent.number, carrier: 'the ferry', number: 'F 17' },
    ...{ sentOn: '2026-11-21', arrivedOn: null, bytes: null },
    ...over,
  };
}

describe('the carrier’s slip', () => {
  test('is missing until it is kept, and takes its arrival and picture later', async () => {
    const missing = await listProofMissing(gallery.books);
    expect(missing.map((receipt) => receipt.number)).toEqual([sent.number]);
    expect((await keepProof(doing(gallery.clerk), slip())).ok).toBe(true);
    expect(await listProofMissing(gallery.books)).toEqual([]);
    const blank = { width: 40, height: 30, channels: 3, background: '#ddd' } as const;
    const bytes = new Uint8Array(await sharp({ create: blank }).png().toBuffer());
    const arrived = slip({ arrivedOn: '2026-11-24', bytes });
    expect((await keepProof(doing(gallery.clerk), arrived)).ok).toBe(true);
    await keepProof(doing(gallery.clerk), slip({ arrivedOn: '2026-11-25' }));
    const receipt = await findReceipt(gallery.books, sent.number);
    expect(receipt?.proof).toMatchObject({ carrier: 'the ferry', arrivedOn: '2026-11-25' });
    expect(receipt?.proof?.fileId).toMatch(/^[0-9a-f-]{36}$/);
  });

  test.each<[string, Partial<Slip>]>([
    ['unknown_sale', { saleNumber: 999 }],
    ['sent_before_sold', { sentOn: '2026-11-19' }],
    ['arrived_before_sent', { arrivedOn: '2026-11-20' }],
    ['not_a_picture', { bytes: new TextEncoder().encode('a note and no picture') }],
  ])('%s is refused', async (code, over) => {
    const kept = await keepProof(doing(gallery.clerk), slip(over));
    expect(kept).toMatchObject({ ok: false, refusal: { code } });
    if (!kept.ok) expect(proofRefusalMessage(kept.refusal)).toMatch(/[.!?]$/);
    expect(await db().deliveryProof.count()).toBe(0);
  });

  test('what was carried out of the door has none, and the bookkeeper keeps none', async () => {
    const out = await keepProof(doing(gallery.clerk), slip({ saleNumber: taken.number }));
    expect(out).toMatchObject({ refusal: { code: 'not_sent' } });
    const books = await keepProof(doing(gallery.books), slip());
    expect(books).toMatchObject({ refusal: { code: 'not_allowed' } });
  });
});

describe('a receipt', () => {
  test('tells what was taken off, why no tax, and for whom it is', async () => {
    const receipt = await findReceipt(gallery.books, sent.number);
    if (!receipt) throw new Error('What was sold has its receipt.');
    expect(receipt.lines[0]?.discounts).toMatchObject([{ reason: 'a scuffed box' }]);
    expect(receipt).toMatchObject({ exemptWhy: 'sent to another state', giftTo: 'Sabine' });
    const pages = await getGallery();
    const [whole, gift] = [
      await receiptPdf(receipt, pages, 'whole'),
      await receiptPdf(receipt, pages, 'gift'),
    ];
    expect(whole.length).toBeGreaterThan(gift.length);
  });

  test.each([
    ['its number', () => String(taken.number), () => [taken.number]],
    ['who bought', () => 'halloran', () => [sent.number]],
    ['the piece', () => 'sword', () => [sent.number, taken.number]],
    ['the code of the piece', () => 'sf-08', () => [sent.number, taken.number]],
    ['letters that nobody has', () => 'مرجان 🌊', () => []],
    ['nothing at all', () => '  ', () => []],
  ])('is found by %s', async (_label, letters, numbers) => {
    const found = await findReceipts(gallery.books, letters());
    expect(found.map((receipt) => receipt.number)).toEqual(numbers());
  });
});
