import { describe, expect, test } from 'vitest';
import { decideReturn, type AskedReturn, type ReturnSetting } from '@/lib/returns/rules';
import { returnEntry } from '@/lib/returns/rules/entry';
import {
  returnRefusalMessage,
  returnRefusalWords,
  type ReturnRefusal,
} from '@/lib/returns/rules/refusals';
import type { SoldSale } from '@/lib/returns/rules/sold';
import { entryBalances } from '@/lib/ledger/rules';
import { aLine, aSoldSale, asked, aTender, oneBack, setting } from './a-sale';

function decided(sale: SoldSale, over: Partial<AskedReturn> = {}, on: Partial<ReturnSetting> = {}) {
  const result = decideReturn(sale, asked(over), setting(on));
  if (!result.ok) throw new Error(returnRefusalMessage(result.refusal));
  return result.value;
}

const before = aTender({ kind: 'layaway', layawayId: 'l' });
const gone = { quantity: 1, netCents: 10_000n, taxCents: 800n, numbers: [] };
const edition = aLine({ quantity: 2, numbers: [4, 9], netCents: 20_000n, taxCents: 1_600n });

type Row = [
  code: ReturnRefusal['code'],
  said: RegExp,
  sale: Partial<SoldSale>,
  asked: Partial<AskedReturn>,
  on?: Partial<ReturnSetting>,
];

const rows: Row[] = [
  ['nothing_chosen', /which piece/, {}, { lines: [] }],
  ['void_another_day', /20 November/, {}, { kind: 'voided' }],
  [
    'void_after_return',
    /Take back the rest/,
    { answeredTimes: 1 },
    { kind: 'voided' },
    { returnedOn: '2026-11-20' },
  ],
  ['unknown_line', /not on the receipt/, {}, { lines: [oneBack({ lineId: 'line-9' })] }],
  ['not_so_many', /only 1 is still out/, {}, { lines: [oneBack({ pieces: 2 })] }],
  ['not_so_many', /came back already/, { lines: [aLine({ back: gone })] }, {}],
  ['number_missing', /which numbers/, { lines: [edition] }, { lines: [oneBack({ numbers: [] })] }],
  [
    'number_not_sold',
    /Number 5/,
    { lines: [edition] },
    { lines: [oneBack({ pieces: 2, numbers: [5, 9] })] },
  ],
  [
    'second_already',
    /second already/,
    { lines: [aLine({ isSecond: true })] },
    { lines: [oneBack({ to: 'second', flaw: 'pinholes' })] },
  ],
  ['flaw_missing', /what is wrong/, {}, { lines: [oneBack({ to: 'second', flaw: ' ' })] }],
  ['not_a_place', /becomes of/, { lines: [aLine({ kind: 'typed', skuId: null })] }, {}],
  ['too_late', /14 days .* 4 December/, {}, {}, { returnedOn: '2026-12-05' }],
  [
    'final_sale',
    /for good: it is a second/,
    { lines: [aLine({ finalWhy: 'it is a second' })] },
    {},
  ],
  [
    'belongs_to_a_paper',
    /layaway, the order or the commission/,
    { lines: [aLine({ kind: 'order_deposit', orderId: 'order-1', skuId: null })] },
    { lines: [oneBack({ to: 'nothing' })] },
  ],
  [
    'voucher_was_used',
    /\$40\.00 is left/,
    { lines: [aLine({ kind: 'voucher', creditId: 'c', creditBalanceCents: 4_000n })] },
    { lines: [oneBack({ to: 'nothing' })] },
  ],
  ['fee_above_price', /\$100\.01/, {}, { fee: { cents: 10_001n } }],
  ['refund_above_paid', /At most \$108/, {}, { refunds: new Map([['tender-1', 10_801n]]) }],
  ['refund_does_not_add_up', /\$100\.00/, {}, { refunds: new Map([['tender-1', 10_000n]]) }],
  [
    'only_as_credit',
    /store credit/,
    { tenders: [aTender({ kind: 'on_account', settledCents: 10_800n })] },
    {},
  ],
];

rows.push(['only_as_credit', /money from before/, { tenders: [before] }, {}]);

describe('what is refused, and in which words', () => {
  test.each(rows)('%s', (code, said, ...[sale, want, on = {}]) => {
    const result = decideReturn(aSoldSale(sale), asked(want), setting(on));
    expect(result).toMatchObject({ ok: false, refusal: { code } });
    if (!result.ok) expect(returnRefusalMessage(result.refusal)).toMatch(said);
  });

  test('the first that stands in the way is told, in the order that is written down', () => {
    const sale = aSoldSale({ lines: [aLine({ finalWhy: 'it is a second' })] });
    const late = setting({ returnedOn: '2027-01-05' });
    const many = asked({ lines: [oneBack({ pieces: 3 })], fee: { cents: 99_999n } });
    const codes = [many, asked({ fee: { cents: 99_999n } })].map((want) => {
      const result = decideReturn(sale, want, late);
      return result.ok ? null : result.refusal.code;
    });
    expect(codes).toEqual(['not_so_many', 'too_late']);
  });

  test('a refusal of a line stands at the field of that line', () => {
    const refusal = { code: 'not_so_many', lineId: 'a', title: 'Tern', left: 1 } as const;
    expect(Object.keys(returnRefusalWords(refusal).fields)).toEqual(['pieces.a']);
    expect(returnRefusalWords({ code: 'unknown_sale' }).fields).toEqual({});
  });

  test('the last day counts, and the owner takes back what is late or was sold for good', () => {
    expect(decided(aSoldSale(), {}, { returnedOn: '2026-12-04' }).totalCents).toBe(10_800n);
    const final = aSoldSale({ lines: [aLine({ finalWhy: 'it is a second' })] });
    const owner = { returnedOn: '2027-01-05', mayGoBeyond: true } as const;
    expect(decided(final, {}, owner).totalCents).toBe(10_800n);
  });
});

describe('what goes back', () => {
  test('each number of an edition has a line of its own', () => {
    const sale = aSoldSale({
      lines: [edition],
      taxes: [{ authority: 'State', taxCents: 1_600n, backCents: 0n }],
      tenders: [aTender({ amountCents: 21_600n })],
    });
    const both = decided(sale, { lines: [oneBack({ pieces: 2, numbers: [9, 4] })] });
    expect(both.lines.map((line) => [line.editionNumber, line.netCents, line.taxCents])).toEqual([
      [4, 10_000n, 800n],
      [9, 10_000n, 800n],
    ]);
  });

  test('what is still owed is taken off before anything is given back', () => {
    const owed = aTender({ id: 'owed', kind: 'on_account', amountCents: 8_000n });
    const cash = aTender({ amountCents: 2_800n });
    const sale = aSoldSale({ tenders: [owed, cash] });
    const refunds = decided(sale, { how: 'store_credit' }).refunds;
    expect(refunds.map((each) => [each.kind, each.amountCents])).toEqual([
      ['on_account', 8_000n],
      ['store_credit', 2_800n],
    ]);
  });

  test('a sale that is struck out goes back whole, without a fee, as it was paid', () => {
    const voucher = aTender({ id: 'v', kind: 'voucher', creditId: 'c', amountCents: 5_000n });
    const sale = aSoldSale({ tenders: [voucher, aTender({ amountCents: 5_800n })] });
    const void_ = decided(
      sale,
      { kind: 'voided', lines: [], fee: { cents: 500n }, how: 'store_credit' },
      { returnedOn: '2026-11-20' },
    );
    expect([void_.feeCents, void_.totalCents]).toEqual([0n, 10_800n]);
    expect(void_.refunds.map((each) => [each.kind, each.amountCents])).toEqual([
      ['voucher', 5_000n],
      ['cash', 5_800n],
    ]);
  });

  test('a designer’s fee is taken back by the part of the goods that came back', () => {
    const referral = { collectorId: 'designer', amountCents: 1_501n };
    const three = aLine({ quantity: 3, netCents: 30_000n, taxCents: 0n });
    const sale = aSoldSale({
      ...{ referral, lines: [three], taxes: [] },
      tenders: [aTender({ amountCents: 30_000n })],
    });
    expect(decided(sale).referralCents).toBe(500n);
    const after = aLine({
      ...three,
      back: { quantity: 1, netCents: 10_000n, taxCents: 0n, numbers: [] },
    });
    const rest = decided({ ...sale, lines: [after] }, { lines: [oneBack({ pieces: 2 })] });
    expect(rest.referralCents).toBe(1_001n);
  });
});

describe('the postings', () => {
  test.each<[string, SoldSale, Partial<AskedReturn>, [string, bigint][]]>([
    [
      'a tile with a fee',
      aSoldSale(),
      { fee: { percent: '15' } },
      [
        ['4900', 10_000n],
        ['2100', 150n],
        ['2100', 650n],
        ['4050', -1_500n],
        ['1000', -9_300n],
      ],
    ],
    [
      'a voucher that nobody used',
      aSoldSale({
        lines: [
          aLine({ kind: 'voucher', taxCents: 0n, creditId: 'c', creditBalanceCents: 10_000n }),
        ],
        ...{ taxes: [], tenders: [aTender({ kind: 'card', amountCents: 10_000n })] },
      }),
      { lines: [oneBack({ to: 'nothing' })] },
      [
        ['2200', 10_000n],
        ['1010', -10_000n],
      ],
    ],
    [
      'a tile for which a designer was promised a fee, as store credit',
      aSoldSale({ referral: { collectorId: 'd', amountCents: 1_000n } }),
      { how: 'store_credit' },
      [
        ['4900', 10_000n],
        ['2100', 150n],
        ['2100', 650n],
        ['2210', -10_800n],
        ['2300', 1_000n],
        ['6100', -1_000n],
      ],
    ],
  ])('%s', (_label, sale, want, lines) => {
    const postings = returnEntry(decided(sale, want), 'credit-1');
    expect(postings.map(({ account, amountCents }) => [account, amountCents])).toEqual(lines);
    expect(entryBalances(postings)).toBe(true);
  });

  test('what is kept of a deposit is no fee for restocking', () => {
    const sale = aSoldSale({
      lines: [aLine({ kind: 'layaway_payment', layawayId: 'l', taxCents: 0n })],
      ...{ taxes: [], tenders: [aTender({ amountCents: 10_000n })] },
    });
    const want = { lines: [oneBack({ to: 'nothing' })], fee: { cents: 2_500n } } as const;
    const back = decided(sale, want, { endsPaper: true, returnDays: 0 });
    expect(returnEntry(back, null)).toEqual([
      { account: '2010', amountCents: 10_000n, layawayId: 'l' },
      { account: '4060', amountCents: -2_500n },
      { account: '1000', amountCents: -7_500n },
    ]);
  });
});
