import { describe, expect, test } from 'vitest';
import { findWorking, workings } from '@/lib/workings/list';
import { listed, type NamedWorking } from '@/lib/workings/working';

function workingOf(name: string): NamedWorking {
  const working = findWorking(name);
  if (!working) throw new Error(`${name} is not in the list`);
  return working;
}
const answerOf = (name: string, given: unknown) => workingOf(name).answer(given);
const refusalOf = (working: NamedWorking, given: unknown): string => {
  const answer = working.answer(given);
  return answer.ok ? 'taken' : answer.refusal;
};
const oneLine = { lines: [{ cents: 1_999, taxable: true }], ratePercent: '8.375' };

describe('every calculation of the list', () => {
  test('has a name of its own', () => {
    expect(new Set(workings.map((working) => working.name)).size).toBe(workings.length);
    expect(findWorking('gold-making')).toBeUndefined();
  });

  test.each(workings.map((working) => [working.name, working] as const))(
    '%s says what it does, where that stands, and works out its example',
    (_name, working) => {
      expect(working.formula).toMatch(/\.$/);
      expect(working.source.length).toBeGreaterThan(10);
      const answer = working.answer(working.example);
      expect(answer.ok && answer.value.working.every((step) => step.endsWith('.'))).toBe(true);
      expect(answer.ok && answer.value.working.length > 0).toBe(true);
      expect(answer.ok && answer.value.source).toBe(working.source);
      expect(answer.ok && answer.value.caution).toBe(working.caution);
    },
  );

  test.each(workings.map((working) => [working.name, working] as const))(
    '%s refuses what is no object and a key that is not its own',
    (_name, working) => {
      for (const given of [null, [], 'text', 5]) {
        expect(refusalOf(working, given)).toMatch(/^input: must be an object with the keys /);
      }
      const withColour = { ...working.example, colour: 'moss' };
      expect(refusalOf(working, withColour)).toBe('colour: is not asked for here');
    },
  );

  test.each(workings.map((working) => [working.name, working] as const))(
    '%s names each key that is missing',
    (_name, working) => {
      const refusal = refusalOf(working, {});
      for (const key of Object.keys(working.example)) expect(refusal).toContain(`${key}: must `);
      expect(refusal).not.toContain('\n');
    },
  );
});

describe('what is answered', () => {
  test.each([
    ['money-split', { cents: 10_000, weights: [1, 1, 1] }, { parts: [3_334, 3_333, 3_333] }],
    [
      'instalments',
      { cents: 123_457, percents: ['50', '25', '25'] },
      { parts: [61_729, 30_864, 30_864] },
    ],
    ['sales-tax', { ...oneLine, roundBy: 'invoice' }, { taxCents: 167, perLineCents: [167] }],
    ['check-digit', { digits: '629104150021' }, { checkDigit: 3 }],
    [
      'stock-value',
      { movements: [{ in: 150, unitCents: 2_100 }, { out: 120 }] },
      {
        fifo: { costOfGoodsCents: 252_000, endingCents: 63_000, endingUnits: 30 },
        movingAverage: { costOfGoodsCents: 252_000, endingCents: 63_000, endingUnits: 30 },
      },
    ],
    [
      'reorder-point',
      { perDay: 0.2, leadDays: 30, leadSdDays: 6, serviceLevel: 0.95 },
      { reorderPoint: 11, expectedDemand: 6 },
    ],
    [
      'start-count',
      { good: 12, stepLosses: [0.08, 0.05], certainty: 0.9 },
      { start: 16, expectedGood: 13.984 },
    ],
    ['clay-size', { firedMm: 254, shrinkagePercent: '8' }, { wetMm: 276.087 }],
    [
      'clay-weight',
      { lengthMm: 254, widthMm: 254, thicknessMm: 11, densityGPerCm3: 1.9 },
      { weightG: 1_348 },
    ],
    ['absorption-class', { absorptionPercent: '2.9' }, { class: 'vitreous', frostWarning: null }],
    [
      'glaze-batch',
      {
        base: [
          { material: 'Feldspar', amount: '600' },
          { material: 'Whiting', amount: '400' },
        ],
        additions: [{ material: 'Red iron oxide', amount: '50' }],
        dryG: 2_100,
      },
      { percents: ['60', '40', '5'], grams: ['1200', '800', '100'], stepG: '0.1' },
    ],
    [
      'leach-test',
      {
        ...{ ware: 'pitcher', testedOn: '2026-05-03', laboratory: 'a laboratory' },
        leadMgPerL: ['0.5', '0.5', '0.5', '0.5', '0.5', '0.5'],
        cadmiumMgPerL: ['0.25', '0.26', '0.1', '0.1', '0.1', '0.1'],
      },
      { holds: false, beyond: ['cadmium'] },
    ],
    [
      'piece-cost',
      {
        steps: [
          {
            ...{ name: 'all of it', minutes: '35', lossPercent: '12', clayCents: '90' },
            ...{ glazeCents: '60', firingCents: '62.5', mouldCents: '40' },
          },
        ],
        ...{ centsPerHour: 2_500, overheadPercent: '20' },
      },
      {
        cents: 2_333,
        lines: {
          ...{ clay: 90, glaze: 60, hands: 1_458, firing: 63, mould: 40, losses: 233 },
          overhead: 389,
        },
        goodPercent: 88,
      },
    ],
  ])('%s', (name, given, output) => {
    const answer = answerOf(name, given);
    expect(answer).toMatchObject({ ok: true, value: output });
    const keys = answer.ok ? Object.keys(answer.value).toSorted() : [];
    expect(keys).toEqual([...Object.keys(output), 'caution', 'source', 'working'].toSorted());
  });

  test('the steps of a split carry its numbers', () => {
    expect(answerOf('money-split', { cents: 10_000, weights: [1, 1, 1] })).toMatchObject({
      value: {
        working: [
          '$100.00 is split by the weights 1, 1 and 1, 3 in all.',
          'Cut down to whole cents: $33.33, $33.33 and $33.33.',
          'Left over: $0.01, a cent each to the largest rests, part 1.',
          'The parts are $33.34, $33.33 and $33.33: $100.00 in all.',
        ],
      },
    });
  });

  test('tax by item shows each line, and says how many more than twelve there are', () => {
    const lines = Array.from({ length: 15 }, () => ({ cents: 999, taxable: true }));
    const answer = answerOf('sales-tax', { lines, ratePercent: '7.25', roundBy: 'item' });
    const steps = answer.ok ? answer.value.working : [];
    expect(steps[0]).toBe('Line 1: $9.99 × 7.25% is $0.724275, rounded $0.72.');
    expect(steps.slice(12)).toEqual(['And 3 lines more.', 'Added up: $10.80.']);
  });

  test('tax by invoice shows the one rounding', () => {
    const lines = [
      { cents: 999, taxable: true },
      { cents: 500, taxable: false },
    ];
    expect(answerOf('sales-tax', { lines, ratePercent: '7.25', roundBy: 'invoice' })).toMatchObject(
      {
        value: {
          working: [
            'Taxable: $9.99 of $14.99.',
            '$9.99 × 7.25% is $0.724275 exactly.',
            'Rounded once for the whole sale, half a cent up: $0.72.',
            'Shared over the lines by largest remainder: $0.72 and $0.00.',
          ],
        },
      },
    );
  });
});

describe('what is refused, by its key', () => {
  const lead = { perDay: 0.2, leadDays: 30, leadSdDays: 6, serviceLevel: 0.95 };
  const start = { good: 12, stepLosses: [0.08], certainty: 0.9 };
  const clay = { lengthMm: 254, widthMm: 254, thicknessMm: 11, densityGPerCm3: 1.9 };
  test.each([
    ['money-split', { cents: 1.5, weights: [1] }, /^cents: must be a whole number/],
    ['money-split', { cents: '100', weights: [1] }, /^cents: must be/],
    ['money-split', { cents: 2 ** 53, weights: [1] }, /^cents: must be .*9007199254740991/],
    ['money-split', { cents: 1, weights: [] }, /^weights: must be a list/],
    ['money-split', { cents: 1, weights: [0, 0] }, /^weights: must not all be 0/],
    ['money-split', { cents: 1, weights: [1, -1] }, /^weights\[1\]: must be a whole number of 0/],
    ['money-split', { cents: 1, weights: Array(1_001).fill(1) }, /^weights: .*1000/],
    ['instalments', { cents: 1, percents: ['50', '49'] }, /^percents: must .* add up to 100/],
    ['instalments', { cents: 1, percents: ['half'] }, /^percents\[0\]: must be a decimal/],
    ['instalments', { cents: 1, percents: ['99.9999999'] }, /^percents\[0\]: .* 6 places/],
    ['instalments', { cents: 1, percents: [100] }, /^percents\[0\]: must be a decimal in quotes/],
    ['sales-tax', { ...oneLine, roundBy: 'page' }, /^roundBy: must be "invoice" or "item"/],
    ['sales-tax', { ...oneLine, roundBy: 'item', ratePercent: '-1' }, /^ratePercent: must/],
    ['sales-tax', { ...oneLine, roundBy: 'item', ratePercent: 8 }, /^ratePercent: .* in quotes/],
    ['sales-tax', { ...oneLine, roundBy: 'item', lines: [] }, /^lines: must be a list/],
    [
      'sales-tax',
      { ...oneLine, roundBy: 'item', lines: [{ cents: 10 ** 12, taxable: 1 }] },
      /^lines\[0\]\.cents: must .*; lines\[0\]\.taxable: must be true or false/,
    ],
    [
      'sales-tax',
      { ...oneLine, roundBy: 'item', lines: [{ cents: 1, taxable: true, gift: true }] },
      /^lines\[0\]\.gift: is not asked for here/,
    ],
    ['stock-value', { movements: [] }, /^movements: must be a list/],
    ['stock-value', { movements: [{ in: 1 }] }, /^movements\[0\]: must say either "in"/],
    ['stock-value', { movements: [{ out: 1 }] }, /^movements\[0\]\.out: must not take out more/],
    [
      'stock-value',
      { movements: [{ in: 0.5, unitCents: -1 }] },
      /^movements\[0\]\.in: must be .*; movements\[0\]\.unitCents: must be a whole number/,
    ],
    ['reorder-point', { ...lead, perDay: -1 }, /^perDay: must be how many/],
    ['reorder-point', { ...lead, perDay: '0.2' }, /^perDay: must be how many/],
    ['reorder-point', { ...lead, serviceLevel: 1 }, /^serviceLevel: must .* at most 0\.9999/],
    ['reorder-point', { ...lead, serviceLevel: 0 }, /^serviceLevel: must .* above 0/],
    ['start-count', { ...start, good: 1.5 }, /^good: must be a whole number/],
    ['start-count', { ...start, stepLosses: [1] }, /^stepLosses\[0\]: must be the share/],
    ['start-count', { ...start, stepLosses: [0.9, 0.9, 0.9] }, /^stepLosses: must leave/],
    ['start-count', { ...start, certainty: 1 }, /^certainty: must/],
    ['check-digit', { digits: '12' }, /^digits: must be 7, 11, 12, 13 or 17 digits/],
    ['check-digit', { digits: 629104150021 }, /^digits: must/],
    ['clay-size', { firedMm: 0, shrinkagePercent: '8' }, /^firedMm: must be a length/],
    ['clay-size', { firedMm: -254, shrinkagePercent: '8' }, /^firedMm: must be a length/],
    ['clay-size', { firedMm: 254, shrinkagePercent: '50' }, /^shrinkagePercent: .* less than 50/],
    ['clay-size', { firedMm: 254, shrinkagePercent: 8 }, /^shrinkagePercent: .* in quotes/],
    ['clay-weight', { ...clay, thicknessMm: 0 }, /^thicknessMm: must be a length/],
    ['clay-weight', { ...clay, densityGPerCm3: 0 }, /^densityGPerCm3: must be a number/],
    ['clay-weight', { ...clay, densityGPerCm3: '1.9' }, /^densityGPerCm3: must be a number/],
    ['absorption-class', { absorptionPercent: '101' }, /^absorptionPercent: must/],
  ])('%s of %j', (name, given, line) => {
    expect(refusalOf(workingOf(name), given)).toMatch(line);
  });
});

test('a list in a sentence stops after twelve', () => {
  const numbers = Array.from({ length: 13 }, (_, place) => String(place + 1));
  expect([listed([]), listed(['a']), listed(['a', 'b', 'c'])]).toEqual(['none', 'a', 'a, b and c']);
  expect(listed(numbers)).toBe('1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 and 1 more');
  expect(listed(numbers.slice(0, 12))).toMatch(/, 11 and 12$/);
});
