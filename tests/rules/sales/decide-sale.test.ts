import { describe, expect, test } from 'vitest';
import {
  decideCommissionSale,
  decideSale,
  mergeLines,
  type PieceForSale,
  type SaleSetting,
  type SlipToSell,
} from '@/lib/sales/rules';
import { saleRefusalMessage, type SaleRefusal } from '@/lib/sales/rules/refusals';

const soldAt = new Date('2026-11-20T22:04:00Z');

function aPiece(over: Partial<PieceForSale> = {}): PieceForSale {
  return {
    skuId: 'tern',
    sku: 'TS-10-CI',
    designId: 'tern over shoals',
    title: 'Tern over Shoals',
    what: 'relief tile, celadon over iron slip · 10 × 10 in · TS-10-CI',
    size: '10 × 10 in',
    priceCents: 18_000n,
    costCents: 4_200n,
    ...{ onHand: 3, held: 0, making: 'open_stock', grade: 'first', weightG: 3_100 },
    last: null,
    ...over,
  };
}

function aSetting(over: Partial<SaleSetting> = {}): SaleSetting {
  return {
    soldAt,
    soldOn: '2026-11-20',
    taxPlace: 'Cedar Landing',
    taxParts: [
      { name: 'State', ratePercent: '6.5' },
      { name: 'Cedar Landing', ratePercent: '1.5' },
    ],
    roundTaxBy: 'invoice',
    ...over,
  };
}

function aSlip(over: Partial<SlipToSell> = {}): SlipToSell {
  return {
    lines: [{ skuId: 'tern', quantity: 1 }],
    tenders: [{ kind: 'cash', givenCents: 20_000n }],
    expectedTotalCents: 19_440n,
    ...over,
  };
}

const shelf = (...pieces: PieceForSale[]) => new Map(pieces.map((piece) => [piece.skuId, piece]));

describe('a sale at the counter', () => {
  test('keeps words and prices, shares the tax, and gives change', () => {
    const sale = decideSale(aSlip(), shelf(aPiece()), aSetting());
    expect(sale).toEqual({
      ok: true,
      value: {
        lines: [
          {
            kind: 'piece',
            skuId: 'tern',
            designId: 'tern over shoals',
            title: 'Tern over Shoals',
            what: 'relief tile, celadon over iron slip · 10 × 10 in · TS-10-CI',
            quantity: 1,
            unitPriceCents: 18_000n,
            unitCostCents: 4_200n,
            taxable: true,
            discountCents: 0n,
            taxableCents: 18_000n,
            netCents: 18_000n,
            taxCents: 1_440n,
          },
        ],
        taxes: [
          { authority: 'State', ratePercent: '6.5', taxableCents: 18_000n, taxCents: 1_170n },
          { authority: 'Cedar Landing', ratePercent: '1.5', taxableCents: 18_000n, taxCents: 270n },
        ],
        netCents: 18_000n,
        taxCents: 1_440n,
        totalCents: 19_440n,
        tenders: [{ kind: 'cash', amountCents: 19_440n, givenCents: 20_000n, reference: '' }],
      },
    });
  });

  test('counts the same piece on two lines together before it looks at the shelf', () => {
    const twice = [
      { skuId: 'tern', quantity: 2 },
      { skuId: 'tern', quantity: 2 },
    ];
    expect(mergeLines(twice)).toEqual([{ skuId: 'tern', quantity: 4 }]);
    const sale = decideSale(aSlip({ lines: twice }), shelf(aPiece()), aSetting());
    expect(sale).toMatchObject({ refusal: { code: 'not_enough_pieces', wanted: 4, onHand: 3 } });
  });

  test('sells the last one', () => {
    expect(decideSale(aSlip(), shelf(aPiece({ onHand: 1 })), aSetting()).ok).toBe(true);
  });

  test('a rate of nothing is a rate', () => {
    const untaxed = aSetting({ taxParts: [{ name: 'State', ratePercent: '0' }] });
    const sale = decideSale(aSlip({ expectedTotalCents: 18_000n }), shelf(aPiece()), untaxed);
    expect(sale).toMatchObject({ ok: true, value: { taxCents: 0n, totalCents: 18_000n } });
  });
});

/**
 * Each refusal by a sale that breaks its own rule and all that come after it, so that the order
 * in which they are told is part of the check. `unknown_collector` is the write's own, and asked
 * before all of these.
 */
type Row = { slip?: Partial<SlipToSell>; piece?: Partial<PieceForSale>; rates?: [] };
const card = { kind: 'card', amountCents: 1n, reference: '4111 1111 1111 1111' } as const;
const littleCash = { kind: 'cash', givenCents: 5n } as const;
const broke = { expectedTotalCents: 1n, tenders: [card, littleCash] };

const rows: Record<Exclude<SaleRefusal['code'], 'unknown_collector'>, Row> = {
  nothing_on_slip: { slip: { ...broke, lines: [] }, piece: { onHand: 0 }, rates: [] },
  unknown_piece: {
    slip: { ...broke, lines: [aSlip().lines, { skuId: 'otter', quantity: 1 }].flat() },
    piece: { priceCents: 0n, onHand: 0 },
    rates: [],
  },
  no_price: { slip: broke, piece: { priceCents: 0n, onHand: 0 }, rates: [] },
  not_enough_pieces: { slip: broke, piece: { onHand: 0 }, rates: [] },
  no_tax_rate: { slip: broke, rates: [] },
  price_changed: { slip: broke },
  card_number_typed: { slip: { tenders: [card, littleCash] } },
  tenders_do_not_add_up: {
    slip: { tenders: [{ kind: 'card', amountCents: 1n, reference: '' }] },
  },
  not_enough_cash: { slip: { tenders: [littleCash] } },
  far_too_much_cash: { slip: { tenders: [{ kind: 'cash', givenCents: 9_638_507_400n }] } },
};

const messages: Record<SaleRefusal['code'], RegExp> = {
  nothing_on_slip: /^There is nothing on the slip yet\./,
  unknown_piece: /not in the catalogue/,
  unknown_collector: /not in the address book/,
  no_price: /^Tern over Shoals \(TS-10-CI\) has no price yet\./,
  not_enough_pieces: /^There is no Tern over Shoals 10 × 10 in here\.$/,
  no_tax_rate: /^No sales tax rate is kept for Cedar Landing on 20 Nov 2026\./,
  price_changed: /^The total was \$0\.01 when you saw it and is \$194\.40 now/,
  card_number_typed: /^That looks like the number of a card/,
  tenders_do_not_add_up: /^What was paid comes to \$0\.01, and the slip to \$194\.40\.$/,
  not_enough_cash: /^\$0\.05 is not enough for \$194\.40: \$194\.35 is missing\.$/,
  far_too_much_cash: /^\$96,385,074\.00 in cash for \$194\.40 cannot be right\./,
};

describe('a sale is refused, the first reason first', () => {
  test.each(Object.entries(rows))('%s', (code, row) => {
    const setting = aSetting(row.rates ? { taxParts: row.rates } : {});
    const sale = decideSale(aSlip(row.slip), shelf(aPiece(row.piece)), setting);
    expect(sale).toMatchObject({ ok: false, refusal: { code } });
    if (sale.ok) return;
    expect(saleRefusalMessage(sale.refusal)).toMatch(messages[sale.refusal.code]);
  });

  test('a collector nobody knows, in words', () => {
    const words = saleRefusalMessage({ code: 'unknown_collector', collectorId: 'x' });
    expect(words).toMatch(messages.unknown_collector);
  });
});

describe('the last one', () => {
  const gone = {
    code: 'not_enough_pieces',
    title: 'Tern over Shoals',
    sku: 'TS-10-CI',
    size: '10 × 10 in',
    wanted: 1,
    onHand: 0,
    askedAt: soldAt,
  } as const;
  const ago = (seconds: number) => new Date(soldAt.getTime() - seconds * 1_000);

  test.each([
    [20, 'just now'],
    [60, 'a minute ago'],
    [150, 'two minutes ago'],
    [3_600, 'an hour ago'],
    [5 * 3_600, 'five hours ago'],
    [86_400, 'a day ago'],
    [40 * 86_400, '40 days ago'],
  ])('sold %i seconds before is told as %s', (seconds, words) => {
    const last = { soldAt: ago(seconds), by: 'Ines Vale', channel: 'counter' as const };
    expect(saleRefusalMessage({ ...gone, last })).toBe(
      `The last Tern over Shoals 10 × 10 in was sold ${words}, at the counter, by Ines Vale.`,
    );
  });

  test('two are here, and three were wanted', () => {
    const words = saleRefusalMessage({ ...gone, last: null, wanted: 3, onHand: 2 });
    expect(words).toBe(
      'There are only 2 of Tern over Shoals 10 × 10 in here, and the slip says 3.',
    );
  });
});

describe('a commission at its hand-over', () => {
  const commission = {
    title: 'Tidewater wall',
    what: 'wall relief of 24 parts',
    priceCents: 1_000_000n,
    taxable: true,
    paidCents: 540_000n,
  };
  const parts = [{ name: 'State', ratePercent: '8' }];

  test.each([
    ['half was paid', 540_000n, { deposit: 540_000n, on_account: 540_000n }],
    ['nothing was paid', 0n, { on_account: 1_080_000n }],
    ['all was paid', 1_080_000n, { deposit: 1_080_000n }],
  ])('%s', (_label, paidCents, tenders) => {
    const sale = decideCommissionSale({ ...commission, paidCents }, parts, 'invoice');
    expect(sale.ok && sale.value.tenders.map((each) => [each.kind, each.amountCents])).toEqual(
      Object.entries(tenders),
    );
  });

  test('more than it comes to was paid', () => {
    const paid = decideCommissionSale({ ...commission, paidCents: 1_080_001n }, parts, 'invoice');
    expect(paid).toEqual({
      ok: false,
      refusal: { code: 'paid_more_than_due', paidCents: 1_080_001n, totalCents: 1_080_000n },
    });
  });
});
