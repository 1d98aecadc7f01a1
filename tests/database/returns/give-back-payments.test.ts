import { beforeEach, describe, expect, test } from 'vitest';
import { constraintOf } from '@/lib/platform/db/errors';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { giveBackPayments, type PaymentsBack } from '@/lib/returns/writes/give-back-payments';
import { startAfresh } from '@/tests/helpers/database';
import { aPieceHere, doing, noon, openGallery, type OpenGallery } from '../sales/open-gallery';
import { balanceOf, lineOf, pieceOf, sell } from './sell';

let gallery: OpenGallery;
let layawayId: string;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const collector = await db().collector.create({ data: { name: 'Alder Quist', createdAt: noon } });
  const layaway = await db().layaway.create({
    data: {
      ...{ collectorId: collector.id, taxPlaceId: gallery.taxPlaceId, agreedOn: noon },
      ...{ finalOn: new Date('2027-02-18'), downCents: 3_000n, netCents: 9_000n },
      ...{ totalCents: 9_720n, terms: 'by our terms', staffId: gallery.clerk.id, at: noon },
    },
  });
  layawayId = layaway.id;
  await sell(gallery, [lineOf('layaway_payment', 3_000n, { layawayId })], [{ kind: 'cash' }]);
  await sell(gallery, [lineOf('layaway_payment', 2_500n, { layawayId })], [{ kind: 'card' }]);
});

function giveBack(over: Partial<PaymentsBack> = {}) {
  const asked = { layawayId, keepCents: 0n, reason: 'plans changed', how: 'same_way' as const };
  return inTransaction((tx) => giveBackPayments(tx, doing(gallery.clerk), { ...asked, ...over }));
}

describe('the money of a layaway that ends', () => {
  test('goes back as it was paid, each payment with its own return, the oldest first', async () => {
    const given = await giveBack();
    expect(given).toMatchObject({ ok: true, value: { givenCents: 5_500n, keptCents: 0n } });
    expect(given.ok && given.value.returns.map((each) => each.number)).toEqual([1, 2]);
    expect(await Promise.all(['1000', '1010', '2010'].map(balanceOf))).toEqual([0n, 0n, 0n]);
  });

  test('what is kept comes out of the oldest, and is earned as a deposit that was kept', async () => {
    const given = await giveBack({ keepCents: 3_500n });
    expect(given).toMatchObject({ ok: true, value: { givenCents: 2_000n, keptCents: 3_500n } });
    const books = await Promise.all(['1000', '1010', '2010', '4060', '4050'].map(balanceOf));
    expect(books).toEqual([3_000n, 500n, 0n, -3_500n, 0n]);
  });

  test('as store credit it is one credit for all payments', async () => {
    const given = await giveBack({ how: 'store_credit' });
    if (!given.ok || !given.value.credit) throw new Error('A credit is opened.');
    const { creditId } = given.value.credit;
    const credit = await db().credit.findUnique({ where: { id: creditId } });
    expect([credit?.balanceCents, await db().credit.count()]).toEqual([5_500n, 1]);
    expect(await balanceOf('1000')).toBe(3_000n);
  });

  test.each<[string, Partial<PaymentsBack>]>([
    ['no_payments', { saleLineIds: [] }],
    ['fee_above_price', { keepCents: 5_501n }],
  ])('%s is refused, and nothing is written', async (code, over) => {
    const asked = 'saleLineIds' in over ? { layawayId: '' } : {};
    expect(await giveBack({ ...asked, ...over })).toMatchObject({ refusal: { code } });
    expect(await db().goodsReturn.count()).toBe(0);
  });

  test('nothing is given back twice, and nothing that was used', async () => {
    await giveBack();
    expect(await giveBack()).toMatchObject({ ok: false, refusal: { code: 'no_payments' } });
    await sell(gallery, [lineOf('layaway_payment', 2_000n, { layawayId })]);
    const names = { sku: 'SF-08-MW', title: 'Sword Fern' };
    const fern = await aPieceHere(gallery, { ...names, priceCents: 1_000n, here: 1 });
    await sell(gallery, [pieceOf(fern)], [{ kind: 'layaway', layawayId }]);
    expect(await giveBack()).toMatchObject({
      refusal: { code: 'deposit_was_used', leftCents: 920n, wantedCents: 2_000n },
    });
  });
});

test('the database itself gives back no more than was paid, whoever asks', async () => {
  const tender = await db().tender.findFirstOrThrow({ where: { kind: 'cash' } });
  const line = await db().saleLine.findFirstOrThrow({ where: { saleId: tender.saleId } });
  const byHand = inTransaction(async (tx) => {
    const paper = { memo: 'by hand', paper: 'GoodsReturn', paperId: line.id };
    const entry = await tx.journalEntry.create({ data: { on: noon, at: noon, ...paper } });
    await tx.posting.createMany({
      data: [1n, -1n].map((amountCents) => ({
        ...{ entryId: entry.id, accountCode: '1000', amountCents },
      })),
    });
    const sums = { netCents: 3_001n, taxCents: 0n, totalCents: 3_001n };
    const answer = await tx.goodsReturn.create({
      data: {
        ...{ saleId: tender.saleId, kind: 'returned', reason: 'by hand', ...sums },
        ...{ returnedOn: noon, at: noon, staffId: gallery.clerk.id, entryId: entry.id },
      },
    });
    const part = { returnId: answer.id, quantity: 1, netCents: 3_001n, taxCents: 0n };
    await tx.goodsReturnLine.create({
      data: { ...part, saleLineId: line.id, to: 'nothing' },
    });
    await tx.refund.create({
      data: {
        ...{ returnId: answer.id, tenderId: tender.id, kind: 'cash', amountCents: 3_001n },
      },
    });
    return { ok: true as const, value: null };
  });
  const rule = await byHand.then(() => 'nothing stood in the way', constraintOf);
  expect(rule).toBe('return_is_covered');
});
