import { describe, expect, test } from 'vitest';
import type { Certificate } from '@/lib/collectors/rules/trade';
import { decideSlip, type SlipPaid } from '@/lib/counter/rules/decide';
import type { CounterFacts } from '@/lib/counter/rules/facts';
import { counterRefusalMessage, type CounterRefusal } from '@/lib/counter/rules/refusals';
import type { SlipContent, SlipLine } from '@/lib/counter/rules/slip';
import { aFern, aLine, aPiece, aSlip, clerk, owner, soldAt, someFacts } from './a-slip';

const just = (expectedTotalCents: bigint, over: Partial<SlipPaid> = {}): SlipPaid => ({
  ...{ tenders: [{ kind: 'cash', givenCents: null }], expectedTotalCents },
  credits: { on: '2026-11-20', byTyped: new Map() },
  ...over,
});

describe('a slip that is sold', () => {
  test('keeps words and prices, shares the tax, and gives change', () => {
    const paid = just(19_440n, { tenders: [{ kind: 'cash', givenCents: 20_000n }] });
    const decided = decideSlip(aSlip([aLine()]), someFacts(), paid);
    expect(decided).toMatchObject({
      ok: true,
      value: {
        sale: {
          lines: [{ title: 'Tern over Shoals', quantity: 1, netCents: 18_000n, taxCents: 1_440n }],
          taxes: [
            { authority: 'State', taxCents: 1_170n },
            { authority: 'Cedar Landing', taxCents: 270n },
          ],
          ...{ netCents: 18_000n, taxCents: 1_440n, totalCents: 19_440n },
          tenders: [{ kind: 'cash', amountCents: 19_440n, givenCents: 20_000n, reference: '' }],
        },
      },
    });
  });

  test('the same piece on two lines counts together before the shelf is looked at', () => {
    const lines = [aLine({ quantity: 2 }), aLine({ id: 'line 2', quantity: 2 })];
    expect(decideSlip(aSlip(lines), someFacts(), just(77_760n))).toMatchObject({
      refusal: { code: 'not_enough_pieces', wanted: 4, onHand: 3 },
    });
  });

  test('a rate of nothing is a rate, and a voucher needs none', () => {
    const { tax } = someFacts();
    const nothing = { ...tax, parts: [{ name: 'State', ratePercent: '0' }] };
    const untaxed = decideSlip(aSlip([aLine()]), someFacts({ tax: nothing }), just(18_000n));
    expect(untaxed).toMatchObject({ ok: true, value: { sale: { taxCents: 0n } } });
    const voucher = {
      id: 'v',
      kind: 'voucher',
      cents: 5_000n,
      forWhom: '',
      discount: null,
    } as const;
    const sold = decideSlip(
      aSlip([voucher]),
      someFacts({ tax: { ...tax, parts: [] } }),
      just(5_000n),
    );
    expect(sold).toMatchObject({ ok: true, value: { sale: { totalCents: 5_000n } } });
  });

  test('a special order takes its agreed price and uses up its deposit', () => {
    const order = { number: 7, title: 'Sword Fern', unitPriceCents: 20_000n, heldCents: 10_000n };
    const orders = new Map([['order', { ...order, hasEnded: false }]]);
    const facts = someFacts({ papers: { ...someFacts().papers, orders } });
    const decided = decideSlip(aSlip([aLine({ orderId: 'order' })]), facts, just(21_600n));
    expect(decided.ok && decided.value.sale.tenders).toMatchObject([
      { kind: 'deposit', amountCents: 10_000n, orderId: 'order' },
      { kind: 'cash', amountCents: 11_600n },
    ]);
  });
});

type Row = { slip?: SlipContent; facts?: Partial<CounterFacts>; paid?: Partial<SlipPaid> };
const slip = (over: Partial<SlipContent> = {}, line: Partial<SlipLine> = {}) =>
  aSlip([aLine(line as Partial<ReturnType<typeof aLine>>)], over);
const kept = { ...aPiece(), onHand: 1, held: 1 };
const held = {
  ...{ id: 'hold', skuId: 'tern', quantity: 1, editionNumber: null, forWhom: 'Odile Sefton' },
  ...{ collectorId: 'odile', untilAt: new Date('2026-11-22T20:00:00Z'), layawayId: null },
};
const set = {
  ...{ setId: 'set', code: 'SHORE-2', title: 'Shore', priceCents: 25_000n, note: '' },
  members: [{ skuId: 'tern', code: 'TS-10-CI', title: 'Tern over Shoals', quantity: 1 }],
};
const pieces = (piece: ReturnType<typeof aPiece>) => ({ pieces: new Map([[piece.skuId, piece]]) });
const off = (cents: bigint, givenById = clerk) =>
  ({ way: 'amount', cents, reason: 'a scratch', givenById }) as const;
const instalment = (id: string): SlipLine => ({
  ...{ id, kind: 'instalment', cents: 100n, commissionId: 'wall', instalmentId: null },
  discount: null,
});
const layaway = { id: 'l', kind: 'layaway_payment', cents: 500n, layawayId: 'lay' } as const;
const papers = {
  commissions: new Map([['wall', { number: 4, title: 'Wall', isHandedOver: false }]]),
  orders: new Map(),
  layaways: new Map([['lay', { number: 3, leftCents: 400n, hasEnded: false }]]),
};
const designer = { id: 'designer', name: 'Hanne Brook', terms: null };
const byVoucher = (code: string, amountCents: bigint | null) => [
  { kind: 'credit', code, amountCents } as const,
];
const credit = (over: object) => ({
  on: '2026-11-20' as const,
  byTyped: new Map([
    [
      'AB',
      {
        ...{ creditId: 'c', code: 'AB', kind: 'voucher' as const, balanceCents: 5n },
        expiresOn: null,
        ...over,
      },
    ],
  ]),
});

type Told = Exclude<
  CounterRefusal['code'],
  | ('unknown_collector' | 'unknown_slip' | 'slip_sold_already' | 'slip_thrown_away')
  | ('slip_changed_meanwhile' | 'slip_is_full' | 'unknown_place' | 'unknown_tax_place')
  | ('unknown_commission_number' | 'payment_refused')
>;

const rows: Record<Told, Row> = {
  nothing_on_slip: { slip: aSlip([]) },
  unknown_piece: { slip: slip({}, { skuId: 'otter' }) },
  unknown_set: {
    slip: aSlip([{ id: 's', kind: 'set', setId: 'gone', quantity: 1, discount: null }]),
  },
  no_price: { facts: pieces(aPiece({ priceCents: 0n, onHand: 0 })) },
  not_enough_pieces: { facts: pieces(aPiece({ onHand: 0 })) },
  held_for_another: { facts: { ...pieces(kept), holds: [held] } },
  number_not_here: {
    slip: aSlip([aLine({ numbers: [9] })]),
    facts: { numbers: new Map([['tern', [1, 2]]]) },
  },
  choose_numbers: { facts: { numbers: new Map([['tern', [1, 2]]]) } },
  set_is_not_split: { facts: { sets: [{ ...set, maySplit: 'never_split' }] } },
  discount_above_price: { slip: slip({ discount: off(18_001n, owner) }) },
  discount_beyond_leave: { slip: slip({ discount: off(1_801n) }) },
  paper_has_ended: { slip: slip({}, { orderId: 'gone' }) },
  more_than_is_left: { slip: aSlip([{ ...layaway, discount: null }]), facts: { papers } },
  one_payment_a_slip: {
    slip: aSlip([instalment('a'), instalment('b')]),
    facts: { papers },
  },
  discount_or_fee_never_both: { slip: slip({ atTradePrice: true, referredById: 'designer' }) },
  no_trade_price: { slip: slip({ atTradePrice: true }) },
  unknown_designer: { slip: slip({ referredById: 'designer' }) },
  designer_is_the_buyer: {
    slip: slip({ referredById: 'designer' }),
    facts: { referrer: designer, collectorId: 'designer' },
  },
  no_referral_terms: { slip: slip({ referredById: 'designer' }), facts: { referrer: designer } },
  certificate_does_not_hold: { slip: slip({ forResale: true }) },
  collect_day_has_passed: { slip: slip({ collect: { untilOn: '2026-11-19', note: '' } }) },
  no_tax_rate: { facts: { tax: { ...someFacts().tax, parts: [] } } },
  price_changed: { paid: { expectedTotalCents: 1n } },
  card_number_typed: {
    paid: {
      tenders: [{ kind: 'card', amountCents: null, reference: '4111 1111 1111 1111' }],
    },
  },
  unknown_voucher: { paid: { tenders: byVoucher('XX', null) } },
  voucher_ran_out: {
    paid: { tenders: byVoucher('AB', null), credits: credit({ expiresOn: '2026-11-19' }) },
  },
  voucher_has_less: { paid: { tenders: byVoucher('AB', 6n), credits: credit({}) } },
  tenders_do_not_add_up: { paid: { tenders: [{ kind: 'card', amountCents: 1n, reference: '' }] } },
  not_enough_cash: { paid: { tenders: [{ kind: 'cash', givenCents: 5n }] } },
  far_too_much_cash: { paid: { tenders: [{ kind: 'cash', givenCents: 9_638_507_400n }] } },
  payment_needs_money: {
    slip: aSlip([instalment('a')]),
    facts: { papers },
    paid: {
      ...{ expectedTotalCents: 100n, tenders: byVoucher('AB', null) },
      credits: credit({ balanceCents: 100n }),
    },
  },
};

describe('a slip is refused, with a sentence', () => {
  test.each(Object.entries(rows))('%s', (code, row) => {
    const facts = someFacts(row.facts);
    const decided = decideSlip(row.slip ?? slip(), facts, just(19_440n, row.paid));
    expect(decided).toMatchObject({ ok: false, refusal: { code } });
    if (decided.ok) return;
    const words = counterRefusalMessage(decided.refusal, 'America/Los_Angeles');
    expect(words).toMatch(/^["“$A-Z0-9].+[.:]/);
    expect(words).not.toMatch(/undefined|null|NaN|\[object/);
  });

  test('the first reason first: the shelf before discounts, discounts before the total', () => {
    const bad = slip({ discount: off(9_000n), referredById: 'nobody' });
    const told = (facts: Partial<CounterFacts>, content = bad) => {
      const decided = decideSlip(content, someFacts(facts), just(1n));
      return decided.ok ? 'sold' : decided.refusal.code;
    };
    expect(told(pieces(aPiece({ onHand: 0, priceCents: 0n })))).toBe('no_price');
    expect(told({ ...pieces(kept), holds: [held] })).toBe('held_for_another');
    expect(told({})).toBe('discount_beyond_leave');
    expect(told({}, slip({ referredById: 'nobody' }))).toBe('unknown_designer');
    expect(told({}, slip())).toBe('price_changed');
  });
});

describe('what is held', () => {
  const facts = { ...pieces(kept), holds: [held] };
  const decide = (over: Partial<CounterFacts>, content = slip()) =>
    decideSlip(content, someFacts({ ...facts, ...over }), just(19_440n));

  test('is told with for whom and until when; when that has lapsed, that it can be let go', () => {
    const refused = decide({});
    const lapsed = decide({ holds: [{ ...held, untilAt: new Date(soldAt.getTime() - 1) }] });
    const say = (result: typeof refused) =>
      result.ok ? '' : counterRefusalMessage(result.refusal, 'America/Los_Angeles');
    expect(say(refused)).toBe(
      'Tern over Shoals is held for Odile Sefton until 22 Nov 2026, 12:00 pm. Call them before you sell it.',
    );
    expect(say(lapsed)).toMatch(/That has lapsed: let it go under Holds/);
  });

  test('goes to the collector who has it held, and to the slip it was put on by', () => {
    for (const sold of [
      decide({ collectorId: 'odile' }),
      decide({}, slip({}, { holdIds: ['hold'] })),
    ]) {
      expect(sold).toMatchObject({
        ok: true,
        value: { sale: { lines: [{ endsHoldIds: ['hold'] }] } },
      });
    }
  });

  test('what is put away for a layaway goes to nobody by the name alone', () => {
    const away = [{ ...held, untilAt: null, layawayId: 'lay' }];
    expect(decide({ holds: away, collectorId: 'odile' })).toMatchObject({
      refusal: { code: 'held_for_another', untilAt: null },
    });
  });
});

describe('a certificate for resale', () => {
  const certificate: Certificate = {
    ...{ id: 'cert', state: 'WA', permitNumber: '601-22', legalName: 'Brook & Daughters' },
    ...{ fromOn: '2026-01-01', untilOn: null, isWithdrawn: false },
  };

  test('leaves the tax away and is kept with the sale', () => {
    const facts = someFacts({ collectorId: 'buyer', certificate: { kind: 'good', certificate } });
    const sold = decideSlip(slip({ forResale: true }), facts, just(18_000n));
    expect(sold).toMatchObject({
      ok: true,
      value: { sale: { taxCents: 0n }, reckoned: { certificateId: 'cert' } },
    });
    expect(decideSlip(slip(), facts, just(19_440n))).toMatchObject({
      value: { sale: { taxCents: 1_440n }, reckoned: { certificateId: null, exemptWhy: '' } },
    });
  });

  test('a second says so on its line', () => {
    const second = aFern({ grade: 'second' });
    const sold = decideSlip(
      aSlip([aLine({ skuId: 'fern' })]),
      someFacts(pieces(second)),
      just(10_422n),
    );
    expect(sold.ok && sold.value.sale.lines[0]?.what).toMatch(/ · second$/);
  });
});
