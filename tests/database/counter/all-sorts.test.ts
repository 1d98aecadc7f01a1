import { beforeEach, describe, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  bringHere,
  doing,
  later,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';
import { aCollector, aSlipWith, change, postedTo, sellIt, slipNow, toldBy } from './a-counter';

let gallery: OpenGallery;
let tern: TestPiece;
let fern: TestPiece;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  tern = await aPieceHere(gallery, {
    ...{ sku: 'TS-10-CI', title: 'Tern over Shoals', priceCents: 18_000n, here: 3 },
  });
  fern = await aPieceHere(gallery, {
    ...{ sku: 'SF-08-MW', title: 'Sword Fern', priceCents: 9_650n, here: 20 },
  });
});

const piece = ({ skuId }: TestPiece, quantity = 1) => ({ kind: 'piece', skuId, quantity }) as const;
const clerk = () => doing(gallery.clerk);
const owner = () => doing(gallery.owner);
const off = (percent: string, lineId: string | null = null) =>
  ({
    does: 'discount',
    lineId,
    discount: { way: 'percent', percent, reason: 'a scratch at the back' },
  }) as const;

describe('a discount', () => {
  test('is kept with its reason and who gave it, and the books show it apart', async () => {
    const slipId = await aSlipWith(clerk(), [piece(tern), piece(fern)]);
    expect(toldBy(await change(clerk(), slipId, off('10')))).toBe('done');
    // 10 in 100 of 276.50 is 27.65, shared as 18.00 and 9.65; 8 % of 248.85 is 19.91.
    expect(toldBy(await sellIt(clerk(), slipId, 26_876n))).toBe('done');
    const discounts = await db().saleDiscount.findMany({ orderBy: { amountCents: 'desc' } });
    expect(discounts.map((each) => [each.kind, each.amountCents, each.reason])).toEqual([
      ['slip', 1_800n, 'a scratch at the back'],
      ['slip', 965n, 'a scratch at the back'],
    ]);
    expect(discounts.every((each) => each.givenById === gallery.clerk.id)).toBe(true);
    expect(await postedTo('4800')).toEqual([2_765n]);
    expect(await postedTo('4000')).toEqual([-27_650n]);
  });

  test('beyond what staff may give is the owner’s, and then stands whoever sells', async () => {
    const slipId = await aSlipWith(clerk(), piece(tern));
    expect(await change(clerk(), slipId, off('11'))).toMatchObject({
      refusal: { code: 'discount_beyond_leave', mostPercent: '10', mostCents: 1_800n },
    });
    expect((await slipNow(slipId)).content.discount).toBeNull();
    expect(toldBy(await change(owner(), slipId, off('50')))).toBe('done');
    expect(toldBy(await sellIt(clerk(), slipId, 9_720n))).toBe('done');
  });

  test('in two portions is no way around', async () => {
    const slipId = await aSlipWith(clerk(), piece(tern));
    const lineId = (await slipNow(slipId)).content.lines[0]?.id ?? '';
    expect(toldBy(await change(clerk(), slipId, off('10', lineId)))).toBe('done');
    expect(toldBy(await change(clerk(), slipId, off('5')))).toBe('discount_beyond_leave');
  });

  test('never touches money for later', async () => {
    const slipId = await aSlipWith(clerk(), { kind: 'voucher', cents: 5_000n, forWhom: '' });
    expect(toldBy(await change(owner(), slipId, off('10')))).toBe('discount_above_price');
  });
});

test('a set comes out at its price exactly, and its pieces leave one by one', async () => {
  const set = await db().pieceSet.create({
    data: {
      ...{ code: 'SHORE-2', title: 'Shore', priceCents: 24_999n, maySplit: 'never_split' },
      createdAt: later(0),
      members: {
        create: [
          { skuId: tern.skuId, quantity: 1 },
          { skuId: fern.skuId, quantity: 2 },
        ],
      },
    },
  });
  const slipId = await aSlipWith(clerk(), { kind: 'set', setId: set.id, quantity: 1 });
  expect(toldBy(await sellIt(clerk(), slipId, 26_999n))).toBe('done');
  const sale = await db().sale.findFirstOrThrow({ include: { lines: true } });
  expect(sale.netCents).toBe(24_999n);
  expect(sale.lines.map((line) => line.quantity).toSorted()).toEqual([1, 2]);

  const alone = await aSlipWith(clerk(), piece(fern));
  expect(toldBy(await sellIt(clerk(), alone, 10_422n))).toBe('set_is_not_split');
  expect(toldBy(await sellIt(owner(), alone, 10_422n))).toBe('done');
});

test('an edition leaves by its number: the lowest free one, or the one that was scanned', async () => {
  const heron = await aPieceHere(gallery, {
    ...{ sku: 'HL-12-TK', title: 'Heron at Low Water', priceCents: 24_000n, here: 0 },
  });
  await db().sku.update({ where: { id: heron.skuId }, data: { making: 'edition' } });
  const statedOn = later(0);
  await db().edition.create({ data: { skuId: heron.skuId, size: 5, statedOn } });
  const { counterId: placeId } = gallery;
  for (const editionNumber of [1, 2, 4]) {
    const came = { quantity: 1, reason: 'made', editionNumber, at: later(0) } as const;
    await db().stockMovement.create({ data: { skuId: heron.skuId, placeId, ...came } });
  }
  const slipId = await aSlipWith(clerk(), [piece(heron), { ...piece(heron), numbers: [4] }]);
  expect((await slipNow(slipId)).content.lines).toMatchObject([{ quantity: 2, numbers: [1, 4] }]);
  expect(toldBy(await sellIt(clerk(), slipId, 51_840n))).toBe('done');
  const left = await db().editionPiece.findMany({ where: { placeId } });
  expect(left.map((each) => each.number)).toEqual([2]);
  const gone = await aSlipWith(clerk(), { ...piece(heron), numbers: [4] });
  expect(toldBy(await sellIt(clerk(), gone, 25_920n))).toBe('number_not_here');
});

describe('a voucher', () => {
  async function aVoucher(): Promise<string> {
    const slipId = await aSlipWith(clerk(), { kind: 'voucher', cents: 10_000n, forWhom: 'Marit' });
    expect(toldBy(await sellIt(clerk(), slipId, 10_000n))).toBe('done');
    return (await db().credit.findFirstOrThrow()).code;
  }

  test('is a debt when it is sold, untaxed, and pays later with the rest in cash', async () => {
    const code = await aVoucher();
    expect(await postedTo('2200')).toEqual([-10_000n]);
    expect(await postedTo('2100')).toEqual([]);
    const slipId = await aSlipWith(clerk(), piece(fern, 2));
    const tenders = [
      { kind: 'credit', code: code.toLowerCase(), amountCents: null },
      { kind: 'cash', givenCents: 11_000n },
    ] as const;
    expect(await sellIt(clerk(), slipId, 20_844n, { tenders })).toMatchObject({
      value: { change: '156' },
    });
    expect(await postedTo('2200')).toEqual([-10_000n, 10_000n]);
    expect((await db().credit.findFirstOrThrow()).balanceCents).toBe(0n);
  });

  test('spent at two tills at once is spent once', async () => {
    const code = await aVoucher();
    const slips = await Promise.all([1, 2].map(() => aSlipWith(clerk(), piece(fern))));
    const tenders = [
      { kind: 'credit', code, amountCents: 10_000n },
      { kind: 'cash', givenCents: null },
    ] as const;
    const tries = await Promise.all(
      slips.map((slipId) => sellIt(clerk(), slipId, 10_422n, { tenders })),
    );
    expect(tries.map(toldBy).toSorted()).toEqual(['done', 'voucher_has_less']);
    expect(await db().sale.count()).toBe(2);
  });
});

describe('where it goes', () => {
  test('sent to a state where the gallery is not registered, nothing is charged, and it says why', async () => {
    const place = await db().taxPlace.create({ data: { name: 'Elk Fork', state: 'OR' } });
    await db().taxState.create({ data: { state: 'OR' } });
    const slipId = await aSlipWith(clerk(), [
      piece(tern),
      { kind: 'shipping', words: 'Freight', cents: 2_400n },
    ]);
    const delivery = { way: 'sent', to: 'Odile Sefton, Elk Fork', taxPlaceId: place.id } as const;
    expect(toldBy(await change(clerk(), slipId, { does: 'deliver', delivery }))).toBe('done');
    expect(toldBy(await sellIt(clerk(), slipId, 20_400n))).toBe('done');
    const sale = await db().sale.findFirstOrThrow();
    expect(sale).toMatchObject({ channel: 'shipped', delivery: 'sent', taxPlaceId: place.id });
    expect(sale.deliverTo).toBe('Odile Sefton, Elk Fork');
    expect(sale.exemptWhy).toMatch(/not registered in OR/);
    expect(await postedTo('4020')).toEqual([-2_400n]);
  });

  test('sold, and still hanging here until a day', async () => {
    const slipId = await aSlipWith(clerk(), piece(tern));
    const past = { untilOn: '2026-11-19', note: '' } as const;
    expect(toldBy(await change(clerk(), slipId, { does: 'collect', collect: past }))).toBe(
      'collect_day_has_passed',
    );
    const collect = { untilOn: '2026-12-24', note: 'after the show' } as const;
    await change(clerk(), slipId, { does: 'collect', collect });
    expect(toldBy(await sellIt(clerk(), slipId, 19_440n))).toBe('done');
    expect(await db().toCollect.findFirstOrThrow()).toMatchObject({ note: 'after the show' });
  });

  test('at a fair: its price, its tax, its pieces; the next slip begins there', async () => {
    const taxPlace = await db().taxPlace.create({
      data: {
        ...{ name: 'Heron Bay', state: 'WA' },
        rates: { create: [{ authority: 'State', ratePercent: '10', fromOn: later(-9e6) }] },
      },
    });
    const place = await db().place.create({ data: { name: 'Reed Fair', kind: 'fair' } });
    const days = { fromOn: new Date('2026-11-20'), untilOn: new Date('2026-11-22') };
    const fair = await db().fair.create({
      data: {
        ...{ name: 'Reed Fair', placeId: place.id, taxPlaceId: taxPlace.id, ...days },
        prices: { create: [{ skuId: fern.skuId, priceCents: 9_000n }] },
      },
    });
    await bringHere({ ...gallery, counterId: place.id }, fern.skuId, 2);
    const slipId = await aSlipWith(clerk(), piece(fern));
    await change(clerk(), slipId, { does: 'place', placeId: place.id });
    expect(toldBy(await sellIt(clerk(), slipId, 9_900n))).toBe('done');
    const sale = await db().sale.findFirstOrThrow();
    expect(sale).toMatchObject({ channel: 'fair', fairId: fair.id, placeId: place.id });
    const next = await aSlipWith(clerk(), piece(fern));
    expect(toldBy(await sellIt(clerk(), next, 9_900n))).toBe('done');
    const later_ = await aSlipWith({ actor: gallery.clerk, at: later(9 * 86_400) }, piece(fern));
    expect(await db().slip.findUniqueOrThrow({ where: { id: later_ } })).toMatchObject({
      placeId: gallery.counterId,
    });
  });
});

test('a designer’s fee is owed with an entry of its own; the trade price and a fee never meet', async () => {
  const hanne = await aCollector('Hanne Brook', {
    ...{ kind: 'designer' },
    tradeTerms: { create: { way: 'referral_fee', percent: 10, sinceOn: later(-9e6) } },
  });
  const joss = await aCollector('Joss Arden', {
    tradeTerms: { create: { way: 'discount', percent: 15, sinceOn: later(-9e6) } },
  });
  const slipId = await aSlipWith(clerk(), piece(tern));
  const referred = { does: 'referred', collectorId: hanne } as const;
  expect(toldBy(await change(clerk(), slipId, referred))).toBe('done');
  expect(toldBy(await sellIt(clerk(), slipId, 19_440n))).toBe('done');
  expect(await postedTo('6100')).toEqual([1_800n]);
  expect(await postedTo('2300')).toEqual([-1_800n]);

  const trade = await aSlipWith(clerk(), piece(tern));
  await change(clerk(), trade, { does: 'name', collectorId: joss });
  expect((await slipNow(trade)).content.atTradePrice).toBe(true);
  expect(toldBy(await change(clerk(), trade, referred))).toBe('discount_or_fee_never_both');
  expect(toldBy(await sellIt(clerk(), trade, 16_524n))).toBe('done');
});
