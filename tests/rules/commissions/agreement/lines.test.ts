import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { linesWith } from '@/lib/commissions/rules/agreement/lines';
import { lineKinds, lineWords, type CommissionLine } from '@/lib/commissions/rules/proposal/lines';
import { sumCents } from '@/lib/money/rules';

const line = (kind: CommissionLine['kind'], amountCents: bigint): CommissionLine => ({
  ...{ kind, amountCents, words: lineWords[kind] },
});
const sum = (lines: readonly CommissionLine[]) => sumCents(lines.map((each) => each.amountCents));

describe('the lines that are agreed now', () => {
  test('a change goes to the line of its kind, or is a line of its own', () => {
    const original = [line('work', 100n), line('installation', 60n)];
    expect(linesWith(original, [{ kind: 'installation', priceCents: 5n }])).toEqual([
      line('work', 100n),
      line('installation', 65n),
    ]);
    expect(linesWith(original, [{ kind: 'crate', priceCents: 5n }])).toEqual([
      ...original,
      line('crate', 5n),
    ]);
  });

  test('what takes off beyond its line comes off the others', () => {
    const original = [line('work', 100n), line('installation', 60n)];
    expect(linesWith(original, [{ kind: 'installation', priceCents: -70n }])).toEqual([
      line('work', 90n),
    ]);
  });

  test('a line that was taken off whole is no line; the last one stays', () => {
    const original = [line('work', 100n), line('crate', 60n)];
    const off = { kind: 'crate', priceCents: -60n } as const;
    expect(linesWith(original, [off])).toEqual([line('work', 100n)]);
    expect(linesWith(original, [off, { kind: 'work', priceCents: -100n }])).toEqual([
      line('work', 0n),
    ]);
  });

  // The law of the agreement: what is agreed is always the original and its signed changes.
  test('always come to the original and its changes, and none stands below nothing', () => {
    const kind = fc.constantFrom(...lineKinds);
    const originals = fc.array(fc.record({ kind, amountCents: fc.bigInt(0n, 10_000n) }), {
      ...{ minLength: 1, maxLength: 7 },
    });
    const changes = fc.array(fc.record({ kind, priceCents: fc.bigInt(-9_000n, 9_000n) }), {
      maxLength: 8,
    });
    fc.assert(
      fc.property(originals, changes, (said, asked) => {
        const original = said.map((each) => line(each.kind, each.amountCents));
        const now = linesWith(original, asked);
        const whole = sum(original) + sumCents(asked.map(({ priceCents }) => priceCents));
        expect(sum(now)).toBe(whole > 0n ? whole : 0n);
        expect(now.every(({ amountCents }) => amountCents >= 0n)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});
