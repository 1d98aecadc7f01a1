import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { formatDecimal, parseDecimal } from '@/lib/money/rules/decimal';
import {
  channelsAt,
  commonPrices,
  costOfOne,
  costRefusalMessage,
  leftOf,
  type CostFacts,
  type CostRefusal,
  type CostStep,
} from '@/lib/studio/rules/costs/cost';
import { fractionOf, type Fraction } from '@/lib/studio/rules/costs/fraction';

const cents = (text: string): Fraction => fractionOf(parseDecimal(text) ?? { units: 0n, scale: 0 });
const aStep = (over: Partial<CostStep> = {}): CostStep => ({
  ...{ name: 'pressing', minutesEach: '0', lossPercent: '0', ...over },
});
const worked = (facts: Partial<CostFacts>) => {
  const cost = costOfOne({ steps: [], centsPerHour: 0n, overheadPercent: '0', ...facts });
  if (!cost.ok) throw new Error(costRefusalMessage(cost.refusal));
  return cost.value;
};
const lineOf = (cost: ReturnType<typeof worked>) =>
  Object.fromEntries(cost.lines.map(({ what, cents: each }) => [what, each]));

test('what is spent at a step is borne by those that come through it and all later ones', () => {
  const steps = [
    aStep({ name: 'casting', lossPercent: '50', clay: cents('100') }),
    aStep({ name: 'the glaze kiln', lossPercent: '20', firing: cents('40') }),
    aStep({ name: 'packing', minutesEach: '6' }),
  ];
  const cost = worked({ steps, centsPerHour: 3_000n });
  // Clay 100 ÷ (0.5 × 0.8), the firing 40 ÷ 0.8, hands 300 that nothing is lost after.
  expect(cost.totalCents).toBe(250n + 50n + 300n);
  expect(lineOf(cost)).toEqual({
    ...{ clay: 100n, glaze: 0n, hands: 300n, firing: 40n, mould: 0n },
    ...{ losses: 160n, overhead: 0n },
  });
  expect(cost).toMatchObject({ goodHundredths: 4_000, minuteHundredths: 600 });
});

test('hands cost more time than one piece takes, where pieces are lost', () => {
  const steps = [aStep({ minutesEach: '30', lossPercent: '25' }), aStep({ minutesEach: '10.5' })];
  expect(worked({ steps, centsPerHour: 2_500n })).toMatchObject({
    ...{ minuteHundredths: 4_050, borneMinuteHundredths: 5_050 },
  });
});

test('overhead comes on top of everything, the losses too', () => {
  const steps = [aStep({ lossPercent: '50', clay: cents('100') })];
  const cost = worked({ steps, overheadPercent: '12.5' });
  expect(lineOf(cost)).toMatchObject({ clay: 100n, losses: 100n, overhead: 25n });
  expect(cost.totalCents).toBe(225n);
});

const wrong: { facts: Partial<CostFacts>; refusal: CostRefusal; words: RegExp }[] = [
  { facts: { steps: [] }, refusal: { code: 'no_steps' }, words: /no steps yet/ },
  {
    facts: { steps: [aStep({ minutesEach: '', lossPercent: '100' })], overheadPercent: '-1' },
    refusal: { code: 'minutes_out_of_range', step: 'pressing' },
    words: /how many minutes/,
  },
  {
    facts: { steps: [aStep({ lossPercent: '100' })], overheadPercent: '-1' },
    refusal: { code: 'loss_out_of_range', step: 'pressing' },
    words: /less than 100/,
  },
  {
    facts: { steps: [aStep()], overheadPercent: '1000.01' },
    refusal: { code: 'overhead_out_of_range' },
    words: /from 0 to 1,000/,
  },
  { facts: { steps: [aStep()] }, refusal: { code: 'nothing_known' }, words: /Nothing is known/ },
];
test.each(wrong)('$refusal.code', ({ facts, refusal, words }) => {
  const given = { steps: [], centsPerHour: 0n, overheadPercent: '0', ...facts };
  expect(costOfOne(given)).toEqual({ ok: false, refusal });
  expect(costRefusalMessage(refusal)).toMatch(words);
});

test('an hour that costs nothing still leaves the clay', () => {
  expect(worked({ steps: [aStep({ minutesEach: '30', clay: cents('90') })] }).totalCents).toBe(90n);
});

test('a price leaves a part of itself, or nothing', () => {
  expect(leftOf(5_200n, 2_333n)).toEqual({ cents: 2_867n, percent: 55 });
  expect(leftOf(2_000n, 2_500n)).toEqual({ cents: -500n, percent: -25 });
  expect(leftOf(0n, 100n)).toMatchObject({ cents: -100n });
  expect(channelsAt(5_200n, 2_333n).map(({ netCents, left }) => [netCents, left.cents])).toEqual([
    ...[[5_200n, 2_867n] as const, [4_420n, 2_087n] as const],
    ...[[2_600n, 267n] as const, [2_600n, 267n] as const],
  ]);
  expect(commonPrices(2_333n)).toEqual({ wholesaleCents: 4_666n, retailCents: 9_332n });
});

const percent = fc
  .integer({ min: 0, max: 9_500 })
  .map((hundredths) => formatDecimal({ units: BigInt(hundredths), scale: 2 }));
const anyStep = fc.record({
  ...{ name: fc.constant('a step'), lossPercent: percent, minutesEach: percent },
  clay: fc.bigInt({ min: 1n, max: 90_000n }).map((over) => ({ over, under: 7n })),
  firing: fc.bigInt({ min: 0n, max: 90_000n }).map((over) => ({ over, under: 13n })),
});
const anyFacts = fc.record({
  steps: fc.array(anyStep, { minLength: 1, maxLength: 13 }),
  centsPerHour: fc.bigInt({ min: 0n, max: 10_000n }),
  overheadPercent: percent,
});

property.prop([anyFacts])(
  'the lines always come to the whole, and none is below nothing',
  (facts) => {
    const { lines, totalCents } = worked(facts);
    expect(lines.reduce((sum, line) => sum + line.cents, 0n)).toBe(totalCents);
    expect(lines.every((line) => line.cents >= 0n)).toBe(true);
  },
);

property.prop([anyFacts, fc.nat()])(
  'losing more somewhere never makes a piece cheaper',
  (facts, at) => {
    const which = at % facts.steps.length;
    const worse = facts.steps.map((step, place) =>
      place === which ? { ...step, lossPercent: '96' } : step,
    );
    expect(worked({ ...facts, steps: worse }).totalCents).toBeGreaterThanOrEqual(
      worked(facts).totalCents,
    );
  },
);
