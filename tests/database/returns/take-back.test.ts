import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import type { TakeBackInput } from '@/lib/returns/input';
import { findReturn, listReturnsOn } from '@/lib/returns/reads';
import { strikeOut, takeBack } from '@/lib/returns/writes';
import { returnPdf } from '@/lib/documents/counter/return-paper';
import { getGallery } from '@/lib/platform/settings';
import { findReceipt } from '@/lib/sales/reads/receipts';
import { startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  doing,
  later,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';
import { balanceOf, lineOf, pieceOf, sell, type Sold } from './sell';

const day = 86_400;
let gallery: OpenGallery;
let tern: TestPiece;
let sold: Sold;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const names = { sku: 'TS-10-CI', title: 'Tern over Shoals' };
  tern = await aPieceHere(gallery, { ...names, priceCents: 18_037n, here: 5 });
  sold = await sell(
    gallery,
    [pieceOf(tern, 3)],
    [{ kind: 'card', cents: 30_000n }, { kind: 'cash' }],
  );
});

function back(pieces: number, over: Partial<TakeBackInput> = {}): TakeBackInput {
  const lineId = sold.lineIds[0] ?? '';
  return {
    ...{ requestKey: randomUUID(), saleNumber: sold.number, kind: 'returned', how: 'same_way' },
    ...{ feePercent: '0', reason: 'too large for the wall', refunds: [] },
    lines: [{ lineId, pieces, numbers: [], to: 'shelf', flaw: '' }],
    ...over,
  };
}

async function onHand(skuId = tern.skuId): Promise<number> {
  const level = await db().stockLevel.findFirst({ where: { skuId } });
  return level?.onHand ?? 0;
}

/** The number of a return that was taken, or the code of why not. */
async function outcome(answer: ReturnType<typeof takeBack>): Promise<number | string> {
  const result = await answer;
  return result.ok ? result.value.number : result.refusal.code;
}

describe('pieces that come back', () => {
  test('one by one they give back every cent that was paid, and stand on the shelf again', async () => {
    for (const each of [back(1), back(1), back(1)]) {
      expect((await takeBack(doing(gallery.clerk, later(day)), each)).ok).toBe(true);
    }
    const books = await Promise.all(['1000', '1010', '2100'].map(balanceOf));
    expect(books).toEqual([0n, 0n, 0n]);
    expect(await balanceOf('4900')).toBe(-(await balanceOf('4000')));
    expect(await onHand()).toBe(5);
    const receipt = await findReceipt(gallery.books, sold.number);
    expect(receipt?.lines[0]?.backCount).toBe(3);
    expect(receipt?.returns.map((each) => each.kind)).toEqual(['returned', 'returned', 'returned']);
  });

  test('a broken one comes and goes, a second changes its SKU, one that stays moves nothing', async () => {
    const lineId = sold.lineIds[0] ?? '';
    const one = { lineId, pieces: 1, numbers: [], flaw: '' };
    const broken = back(1, { lines: [{ ...one, to: 'broken' }] });
    const stays = back(1, { lines: [{ ...one, to: 'nothing' }] });
    const flawed = back(1, { lines: [{ ...one, to: 'second', flaw: 'a chip at the edge' }] });
    for (const each of [broken, stays, flawed]) {
      expect((await takeBack(doing(gallery.clerk, later(day)), each)).ok).toBe(true);
    }
    expect(await onHand()).toBe(2);
    const second = await db().sku.findFirst({ where: { grade: 'second' } });
    expect(second).toMatchObject({ firstSkuId: tern.skuId, flaw: 'a chip at the edge' });
    expect(await onHand(second?.id)).toBe(1);
    const reasons = await db().stockMovement.groupBy({ by: ['reason'], _sum: { quantity: true } });
    const moved = Object.fromEntries(reasons.map((row) => [row.reason, row._sum.quantity]));
    expect(moved).toMatchObject({ returned: 2, broken: -1, second: 0 });
  });

  test('as a store credit: a number with exactly that on it, and the fee is earned', async () => {
    const credit = back(1, { how: 'store_credit', kind: 'exchanged', feePercent: '10' });
    const taken = await takeBack(doing(gallery.clerk, later(day)), credit);
    if (!taken.ok || taken.value.creditCode === null) throw new Error('A credit is opened.');
    const kept = await db().credit.findUnique({ where: { code: taken.value.creditCode } });
    expect(kept?.balanceCents.toString()).toBe(taken.value.total);
    expect(kept?.kind).toBe('store_credit');
    expect(await balanceOf('2210')).toBe(-BigInt(taken.value.total));
    expect(await balanceOf('4050')).toBe(-1_804n);
    const paper = await findReturn(gallery.books, taken.value.number);
    expect(paper).toMatchObject({ kind: 'exchanged', feeCents: 1_804n, by: 'Perrin Oday' });
    expect(paper?.credits).toEqual([
      { code: taken.value.creditCode, amountCents: BigInt(taken.value.total) },
    ]);
    if (paper) {
      const pdf = await returnPdf(paper, await getGallery());
      expect(Buffer.from(pdf.subarray(0, 5)).toString()).toBe('%PDF-');
    }
  });
});

describe('who and when', () => {
  test('the same key twice is one return; for something else it is refused', async () => {
    const once = back(1);
    const first = await outcome(takeBack(doing(gallery.clerk), once));
    expect(await outcome(takeBack(doing(gallery.second), once))).toBe(first);
    const other = { ...once, reason: 'another reason' };
    expect(await outcome(takeBack(doing(gallery.clerk), other))).toBe(
      'key_used_for_something_else',
    );
    expect(await db().goodsReturn.count()).toBe(1);
  });

  test('two people with the same last pieces: one is told, and nothing goes back twice', async () => {
    const [one, other] = await Promise.all([
      outcome(takeBack(doing(gallery.clerk), back(2))),
      outcome(takeBack(doing(gallery.second), back(2))),
    ]);
    expect([one, other].filter((each) => typeof each === 'number')).toHaveLength(1);
    expect([one, other]).toContain('not_so_many');
    expect(await onHand()).toBe(4);
  });

  test.each<[string, 'maker' | 'books' | 'clerk' | 'owner', Partial<TakeBackInput>, number]>([
    ['not_allowed', 'maker', {}, 1],
    ['not_allowed', 'books', {}, 1],
    ['unknown_sale', 'clerk', { saleNumber: 999 }, 1],
    ['card_number_typed', 'clerk', { reason: 'card 4111 1111 1111 1111' }, 1],
    ['too_late', 'clerk', {}, 30],
  ])('%s for %s', async (code, who, over, days) => {
    const answer = takeBack(doing(gallery[who], later(days * day)), back(1, over));
    expect(await outcome(answer)).toBe(code);
    expect(await db().goodsReturn.count()).toBe(0);
    expect(await onHand()).toBe(2);
  });

  test('the owner takes back what is late', async () => {
    expect(await outcome(takeBack(doing(gallery.owner, later(30 * day)), back(1)))).toBe(1);
  });

  test('it is listed on the day it came back', async () => {
    await takeBack(doing(gallery.clerk, later(day)), back(1));
    expect(await listReturnsOn(gallery.books, '2026-11-20')).toEqual([]);
    const listed = await listReturnsOn(gallery.books, '2026-11-21');
    expect(listed).toMatchObject([{ number: 1, receiptNumber: sold.number, titles: ['TS-10-CI'] }]);
  });
});

describe('a sale that is struck out', () => {
  test('is as if it had not been, on its own day only', async () => {
    const voucher = await db().credit.create({
      data: { code: '2222-2222-2222', kind: 'voucher', createdAt: later(0) },
    });
    const creditId = voucher.id;
    await sell(gallery, [lineOf('voucher', 5_000n, { creditId })]);
    const paid = await sell(
      gallery,
      [pieceOf(tern)],
      [{ kind: 'voucher', cents: 5_000n, creditId }, { kind: 'card' }],
    );
    const out = { saleNumber: paid.number, reason: 'the wrong tile' };
    const late = strikeOut(doing(gallery.clerk, later(day)), { ...out, requestKey: randomUUID() });
    expect(await outcome(late)).toBe('void_another_day');
    const struck = strikeOut(doing(gallery.clerk), { ...out, requestKey: randomUUID() });
    expect(typeof (await outcome(struck))).toBe('number');
    expect(await onHand()).toBe(2);
    const after = await db().credit.findUnique({ where: { id: creditId } });
    expect(after?.balanceCents).toBe(5_000n);
    const again = strikeOut(doing(gallery.clerk), { ...out, requestKey: randomUUID() });
    expect(await outcome(again)).toBe('void_after_return');
  });
});
