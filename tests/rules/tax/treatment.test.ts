import { describe, expect, test } from 'vitest';
import type { TaxKind } from '@/lib/tax/rules';
import {
  taxableOf,
  treatmentOf,
  type DeliveryShare,
  type TaxableLine,
  type TaxSetting,
  type Treatment,
} from '@/lib/tax/rules/treatment';

const state: TaxSetting = {
  place: 'Harrow Inlet',
  state: 'Alderland',
  parts: [{ name: 'State', ratePercent: '5.5' }],
  treatments: [],
  isRegistered: true,
};
const saying = (...treatments: Treatment[]): TaxSetting => ({ ...state, treatments });
const says = (
  kind: Treatment['kind'],
  treatment: Treatment['treatment'],
  shareBy: DeliveryShare | null = null,
): Treatment => ({ kind, treatment, shareBy });

const line = (kind: TaxKind, cents: bigint, over: Partial<TaxableLine> = {}): TaxableLine => ({
  ...{ kind, cents, weightG: null, isSeparate: true },
  ...over,
});
const cents = (lines: readonly TaxableLine[], setting = state) =>
  taxableOf(lines, setting, null).perLine.map((each) => each.taxableCents);

describe('while nothing is kept', () => {
  test('everything that is sold is taxed', () => {
    const lines = [
      line('goods', 30_000n),
      line('shipping', 4_000n),
      line('installation', 9_000n),
      line('design_work', 5_000n),
    ];
    expect(cents(lines)).toEqual([30_000n, 4_000n, 9_000n, 5_000n]);
    expect(treatmentOf([], 'shipping')).toEqual(says('shipping', 'taxed'));
  });

  test('money for later is not', () => {
    const { perLine, exemptWhy } = taxableOf([line('none', 20_000n)], state, null);
    expect(perLine).toEqual([{ taxableCents: 0n, why: 'Money for later is no sale yet.' }]);
    expect(exemptWhy).toBe('');
  });
});

describe('as the state says', () => {
  test.each([
    ['not taxed', says('installation', 'not_taxed'), true, 0n],
    ['not taxed, within another price', says('installation', 'not_taxed'), false, 0n],
    ['a line of its own', says('installation', 'not_taxed_when_separate'), true, 0n],
    ['within another price', says('installation', 'not_taxed_when_separate'), false, 9_000n],
    ['taxed', says('installation', 'taxed'), true, 9_000n],
  ])('%s', (_label, said, isSeparate, taxed) => {
    const lines = [line('goods', 30_000n), line('installation', 9_000n, { isSeparate })];
    expect(cents(lines, saying(said))).toEqual([30_000n, taxed]);
  });

  test('it says why, by name', () => {
    const setting = saying(says('shipping', 'not_taxed_when_separate'));
    const { perLine } = taxableOf([line('shipping', 900n)], setting, null);
    expect(perLine[0]?.why).toBe('Delivery is not taxed in Alderland as a line of its own.');
  });

  test('what brings and hangs untaxed pieces is not taxed either', () => {
    const lines = [line('goods', 30_000n), line('shipping', 4_000n), line('installation', 9_000n)];
    expect(cents(lines, saying(says('goods', 'not_taxed')))).toEqual([0n, 0n, 0n]);
    const shared = saying(says('goods', 'not_taxed'), says('shipping', 'taxed', 'all_taxed'));
    expect(cents(lines, shared)).toEqual([0n, 0n, 0n]);
  });

  test('delivery on its own, with no piece beside it, is taxed', () => {
    expect(cents([line('shipping', 4_000n)], saying(says('goods', 'not_taxed')))).toEqual([4_000n]);
  });
});

describe('nothing is charged', () => {
  const lines = [line('goods', 30_000n), line('shipping', 4_000n), line('none', 1_000n)];

  test('under an exemption, and what goes with the pieces is exempt too', () => {
    const { perLine, exemptWhy } = taxableOf(lines, state, { why: 'For resale: 4471' });
    expect(perLine.map((each) => each.taxableCents)).toEqual([0n, 0n, 0n]);
    expect(exemptWhy).toBe('For resale: 4471');
  });

  test('where the gallery is not registered, and it says that it counts', () => {
    const away = { ...state, state: 'Fenmark', isRegistered: false };
    const { perLine, exemptWhy } = taxableOf(lines, away, null);
    expect(perLine.every((each) => each.taxableCents === 0n)).toBe(true);
    expect(exemptWhy).toBe(
      'The gallery is not registered in Fenmark, so no tax is charged; ' +
        'the sale counts towards the threshold there.',
    );
    expect(taxableOf(lines, { ...away, state: '' }, null).exemptWhy).toMatch(/in Harrow Inlet,/);
  });

  test('and nothing is said of it where nothing was sold', () => {
    const paid = [line('none', 1_000n)];
    expect(taxableOf(paid, { ...state, isRegistered: false }, null).exemptWhy).toBe('');
  });

  test('of an empty slip', () => {
    expect(taxableOf([], state, null)).toEqual({ perLine: [], exemptWhy: '' });
  });
});
