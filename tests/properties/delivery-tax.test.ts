import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import {
  taxableOf,
  type DeliveryShare,
  type TaxableLine,
  type TaxSetting,
} from '@/lib/tax/rules/treatment';

const kinds = ['goods', 'shipping', 'installation', 'design_work'] as const;
const shares: readonly DeliveryShare[] = ['by_price', 'by_weight', 'all_taxed'];
const line: fc.Arbitrary<TaxableLine> = fc.record({
  cents: fc.bigInt({ min: 0n, max: 10_000_000n }),
  kind: fc.constantFrom(...kinds, 'none' as const),
  weightG: fc.option(fc.integer({ min: 0, max: 100_000 })),
  isSeparate: fc.boolean(),
});
const treatment = (kind: (typeof kinds)[number]) =>
  fc.record({
    kind: fc.constant(kind),
    treatment: fc.constantFrom('taxed', 'not_taxed', 'not_taxed_when_separate'),
    shareBy: kind === 'shipping' ? fc.option(fc.constantFrom(...shares)) : fc.constant(null),
  });
const setting: fc.Arbitrary<TaxSetting> = fc.record({
  ...{ place: fc.constant('Harrow Inlet'), state: fc.constant('Alderland') },
  parts: fc.constant([]),
  treatments: fc.tuple(...kinds.map(treatment)),
  isRegistered: fc.boolean(),
});
const lines = fc.array(line, { maxLength: 20 });

test.prop([lines, setting])(
  'of each line between nothing and all of it is taxed',
  (asked, kept) => {
    taxableOf(asked, kept, null).perLine.forEach(({ taxableCents }, place) => {
      expect(taxableCents).toBeGreaterThanOrEqual(0n);
      expect(taxableCents).toBeLessThanOrEqual(asked[place]?.cents ?? -1n);
    });
  },
);

test.prop([lines, setting])('what is not taxed whole says why', (asked, kept) => {
  taxableOf(asked, kept, null).perLine.forEach(({ taxableCents, why }, place) => {
    const whole = asked[place]?.cents ?? -1n;
    expect(why !== '' || taxableCents === whole).toBe(true);
  });
});

test.prop([lines, setting])('an exemption leaves nothing taxed', (asked, kept) => {
  const { perLine } = taxableOf(asked, kept, { why: 'For resale' });
  expect(perLine.every((each) => each.taxableCents === 0n)).toBe(true);
});

const price = fc.bigInt({ min: 0n, max: 5_000_000n });
test.prop([price, price, price, fc.constantFrom('by_price' as const, 'by_weight' as const)])(
  'the taxed and the untaxed share of a delivery add up to it',
  (taxedCents, untaxedCents, deliveryCents, shareBy) => {
    const shareOf = (isTaxedFirst: boolean) => {
      const goods = [taxedCents, untaxedCents].map((cents, place) => ({
        ...{ kind: 'goods' as const, cents, weightG: Number(cents) },
        isSeparate: (place === 0) !== isTaxedFirst,
      }));
      const delivery = { kind: 'shipping', cents: deliveryCents, weightG: null } as const;
      const { perLine } = taxableOf(
        [...goods, { ...delivery, isSeparate: true }],
        {
          ...{ place: 'Harrow Inlet', state: 'Alderland', parts: [], isRegistered: true },
          treatments: [
            { kind: 'goods', treatment: 'not_taxed_when_separate', shareBy: null },
            { kind: 'shipping', treatment: 'taxed', shareBy },
          ],
        },
        null,
      );
      return perLine[2]?.taxableCents ?? -1n;
    };
    fc.pre(taxedCents + untaxedCents > 0n);
    const off = shareOf(true) + shareOf(false) - deliveryCents;
    // Half a cent each way goes to the taxed side.
    expect(off === 0n || off === 1n).toBe(true);
  },
);
