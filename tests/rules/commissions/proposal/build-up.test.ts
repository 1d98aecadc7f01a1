import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import {
  buildUpPrice,
  workKinds,
  type BuildUp,
  type BuildUpInput,
} from '@/lib/commissions/rules/proposal/build-up';
import { areaBesideCost, linesOf, lineKinds } from '@/lib/commissions/rules/proposal/lines';
import { sumCents } from '@/lib/money/rules';

/** A relief of 36 by 60 in, with hours and rates as a studio would write them: common practice. */
const relief: BuildUpInput = {
  ...{ widthUm: 1_524_000, heightUm: 914_400, depthUm: 25_000, pieces: 60, weightG: 90_718 },
  ...{ coats: 3, firings: 8, hourCents: 4_500n, firingCents: 3_000n },
  hours: { design: '14', making: '60', glazing: '26', kiln: '12', assembly: '16', office: '10' },
  ...{ clayCentsPerKg: 0n, glazeCentsPerM2: 0n, boardCentsPerM2: 0n, frameCentsPerM: 0n },
  otherCents: 62_000n,
  ...{ lossPercent: '12', overheadPercent: '20', contingencyPercent: '8', marginPercent: '15' },
  areaCentsPerM2: 484_376n,
  ...{ crateCents: 0n, freightCents: 0n, travelCents: 0n, installationCents: 0n },
};

const dollars = (cents: bigint) => Number((cents + 50n) / 100n);
const money = (cents: bigint) => `$${dollars(cents)}`;

describe('a price built up', () => {
  // Worked by hand from the same inputs; adding up whole dollars instead gives one dollar less.
  test('comes to the dollar for the worked relief', () => {
    const built = buildUpPrice(relief);
    expect(built.direct.map(({ key, cents }) => [key, dollars(cents)])).toEqual([
      ['design', 630],
      ['making', 2700],
      ['glazing', 1170],
      ['kiln', 540],
      ['assembly', 720],
      ['office', 450],
      ['firings', 240],
      ['other', 620],
    ]);
    const { directCents, lossCents, overheadCents, contingencyCents } = built;
    expect([directCents, lossCents, overheadCents, contingencyCents].map(dollars)).toEqual([
      7070, 632, 1414, 729,
    ]);
    const { costCents, marginCents, workCents } = built;
    expect([costCents, marginCents, workCents].map(dollars)).toEqual([9846, 1477, 11323]);
  });

  test('by area at 450 a square foot it would lose three thousand', () => {
    const built = buildUpPrice(relief);
    expect(dollars(built.areaCents)).toBe(6750);
    expect(areaBesideCost(built, money)).toEqual({
      words: 'By area alone it would lose $3096.',
      loses: true,
    });
  });

  test.each([
    ['the same', 1_132_257n, 'By area it comes to the same.'],
    ['between cost and price', 1_000_000n, 'By area it would be $1323 less.'],
    ['above', 1_200_000n, 'By area it would be $677 more.'],
    ['no rate', 0n, 'No rate by area is kept.'],
  ])('beside the cost, %s', (_label, areaCents, words) => {
    const built = { ...buildUpPrice(relief), areaCents, workCents: 1_132_257n };
    expect(areaBesideCost(built, money)).toEqual({ words, loses: false });
  });

  test('a frame, clay, glaze and board are reckoned by their own measure', () => {
    const built = buildUpPrice({
      ...{ ...relief, frameCentsPerM: 2_500n, boardCentsPerM2: 10_000n },
      ...{ clayCentsPerKg: 220n, glazeCentsPerM2: 1_000n },
    });
    const cents = Object.fromEntries(built.direct.map((step) => [step.key, step.cents]));
    // around: 4.8768 m; area: 1.3935456 m²; 90.718 kg
    expect(cents).toMatchObject({ frame: 12_192n, board: 13_935n, clay: 19_958n, glaze: 4_182n });
  });
});

const percent = fc.integer({ min: 0, max: 60 }).map(String);
const cents = fc.bigInt({ min: 0n, max: 500_000n });
const hour = fc
  .integer({ min: 0, max: 4_000 })
  .map((tenths) => `${Math.floor(tenths / 10)}.${tenths % 10}`);
const anyInput: fc.Arbitrary<BuildUpInput> = fc.record({
  widthUm: fc.integer({ min: 1_000, max: 5_000_000 }),
  heightUm: fc.integer({ min: 1_000, max: 5_000_000 }),
  depthUm: fc.integer({ min: 1_000, max: 200_000 }),
  pieces: fc.integer({ min: 1, max: 400 }),
  weightG: fc.integer({ min: 0, max: 900_000 }),
  coats: fc.integer({ min: 0, max: 6 }),
  firings: fc.integer({ min: 0, max: 20 }),
  hours: fc.record({
    ...{ design: hour, making: hour, glazing: hour, kiln: hour, assembly: hour, office: hour },
  }),
  ...{ hourCents: cents, clayCentsPerKg: cents, glazeCentsPerM2: cents, firingCents: cents },
  ...{ boardCentsPerM2: cents, frameCentsPerM: cents, otherCents: cents },
  ...{ lossPercent: percent, overheadPercent: percent },
  ...{ contingencyPercent: percent, marginPercent: percent },
  ...{ areaCentsPerM2: cents, crateCents: cents, freightCents: cents },
  ...{ travelCents: cents, installationCents: cents },
});

function partsOf(built: BuildUp): bigint {
  const { lossCents, overheadCents, contingencyCents, marginCents, extrasCents } = built;
  const added = [lossCents, overheadCents, contingencyCents, marginCents, extrasCents];
  return sumCents([...built.direct.map((step) => step.cents), ...added]);
}

describe('laws of the build-up', () => {
  test('its parts add up to the whole, to the cent', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const built = buildUpPrice(input);
        expect(partsOf(built)).toBe(built.totalCents);
      }),
    );
  });

  test('an hour more never makes it cheaper', () => {
    fc.assert(
      fc.property(anyInput, fc.constantFrom(...workKinds), (input, kind) => {
        const longer = { ...input.hours, [kind]: String(Number(input.hours[kind]) + 1) };
        const more = buildUpPrice({ ...input, hours: longer });
        expect(more.totalCents >= buildUpPrice(input).totalCents).toBe(true);
      }),
    );
  });

  test('the lines that go out come to the price, whatever stands apart', () => {
    const anyWanted = fc.record({
      apart: fc.subarray([...lineKinds]),
      priceCents: fc.option(fc.bigInt({ min: 1n, max: 9_000_000n })),
      designFeePercent: percent,
      designFeeCredited: fc.boolean(),
    });
    fc.assert(
      fc.property(anyInput, anyWanted, (input, wanted) => {
        const built = buildUpPrice(input);
        const { crateCents: crate, freightCents: freight } = input;
        const { travelCents: travel, installationCents: installation } = input;
        const decided = linesOf(built, { crate, freight, travel, installation }, wanted);
        const sum = sumCents(decided.lines.map((line) => line.amountCents));
        expect(sum).toBe(decided.priceCents);
        expect(decided.priceCents).toBe(wanted.priceCents ?? decided.priceCents);
      }),
    );
  });
});
