import { describe, expect, test } from 'vitest';
import type { TaxKind } from '@/lib/tax/rules';
import {
  taxableOf,
  type DeliveryShare,
  type TaxableLine,
  type TaxSetting,
  type Treatment,
} from '@/lib/tax/rules/treatment';

const line = (kind: TaxKind, cents: bigint, over: Partial<TaxableLine> = {}): TaxableLine => ({
  ...{ kind, cents, weightG: null, isSeparate: true },
  ...over,
});
const setting = (treatments: Treatment[], isRegistered = true): TaxSetting => ({
  ...{ place: 'A place', state: 'A state', parts: [], treatments, isRegistered },
});
const shared = (shareBy: DeliveryShare | null): Treatment => ({
  ...{ kind: 'shipping', treatment: 'taxed', shareBy },
});
const taxed = (lines: readonly TaxableLine[], kept: Treatment[] = []) =>
  taxableOf(lines, setting(kept), null).perLine.map((each) => each.taxableCents);
const base = (lines: readonly TaxableLine[], kept: Treatment[] = []) =>
  taxed(lines, kept).reduce((sum, cents) => sum + cents, 0n);

/** Untaxed goods beside taxed ones: the state leaves those alone that stand on their own. */
const ownWork: Treatment = { kind: 'goods', treatment: 'not_taxed_when_separate', shareBy: null };
const mixed = [
  line('goods', 30_000n, { weightG: 4_536, isSeparate: false }),
  line('goods', 10_000n, { weightG: 13_608 }),
  line('shipping', 4_000n),
];

// Revised Code of Washington 82.08.145: the taxed part of a charge for delivering taxed and untaxed
// goods is their share of the prices, or of the weights. The figures are worked from that rule:
// prices of 300 and 100; weights of 10 lb (4,536 g) and 30 lb (13,608 g); delivery of 40.
describe('RCW 82.08.145: a mixed delivery charge', () => {
  test('by price, three quarters of it are taxed', () => {
    expect(taxed(mixed, [ownWork, shared('by_price')])).toEqual([30_000n, 0n, 3_000n]);
  });

  test('by weight, a quarter of it is taxed', () => {
    expect(taxed(mixed, [ownWork, shared('by_weight')])).toEqual([30_000n, 0n, 1_000n]);
  });

  test('by weight with a weight missing, it is shared by price, and says so', () => {
    const unweighed = mixed.map((each) => ({ ...each, weightG: null }));
    const { perLine } = taxableOf(unweighed, setting([ownWork, shared('by_weight')]), null);
    expect(perLine[2]).toEqual({
      taxableCents: 3_000n,
      why: 'The taxed pieces’ share of the delivery by price, because a weight is not known.',
    });
  });
});

// New York State, Tax Bulletin TB-ST-838, 14 May 2012.
describe('TB-ST-838: what delivery adds to the base', () => {
  test.each([
    ['dryer, service contract, own delivery', [49_995n, 3_000n], 2_000n, 54_995n],
    ['custom furniture, carrier billed by the maker', [350_000n], 25_000n, 375_000n],
    ['lumber, prepaid freight', [40_000n], 10_000n, 50_000n],
  ])('%s', (_label, goods, delivery, whole) => {
    const lines = [...goods.map((cents) => line('goods', cents)), line('shipping', delivery)];
    expect(base(lines)).toBe(whole);
  });

  test('one delivery line for taxed and untaxed goods is taxed whole', () => {
    expect(taxed(mixed, [ownWork, shared('all_taxed')])).toEqual([30_000n, 0n, 4_000n]);
  });

  test('delivery of goods that are not taxed is not taxed', () => {
    const untaxed = mixed.slice(1);
    expect(base(untaxed, [ownWork, shared('all_taxed')])).toBe(0n);
  });
});

// Minnesota Revenue, Fact Sheet 155 (2015), and its guide to the sales price: delivery and
// installation are part of the price even when they are listed separately.
test('Minnesota: delivery and installation on lines of their own are taxed', () => {
  const lines = [line('goods', 30_000n), line('shipping', 4_000n), line('installation', 9_000n)];
  const kept: Treatment[] = [
    { kind: 'shipping', treatment: 'taxed', shareBy: 'by_price' },
    { kind: 'installation', treatment: 'taxed', shareBy: null },
  ];
  expect(base(lines, kept)).toBe(43_000n);
});

// Maine Legislature, LD 2073: delivery and installation that are stated separately were to be left
// out of the sales price, and taken in otherwise.
test('Maine’s bill: separately stated delivery and installation are left out', () => {
  const kept: Treatment[] = [
    { kind: 'shipping', treatment: 'not_taxed_when_separate', shareBy: null },
    { kind: 'installation', treatment: 'not_taxed_when_separate', shareBy: null },
  ];
  const separate = [line('goods', 30_000n), line('shipping', 4_000n), line('installation', 9_000n)];
  expect(base(separate, kept)).toBe(30_000n);
  expect(
    base(
      separate.map((each) => ({ ...each, isSeparate: false })),
      kept,
    ),
  ).toBe(43_000n);
});

// Louisiana Department of Revenue, answers on the sales price: the installation of an exempt item
// is exempt too.
test('Louisiana: what hangs an untaxed piece is not taxed', () => {
  const lines = [line('goods', 30_000n), line('installation', 9_000n)];
  const kept: Treatment[] = [{ kind: 'goods', treatment: 'not_taxed', shareBy: null }];
  expect(base(lines, kept)).toBe(0n);
});
