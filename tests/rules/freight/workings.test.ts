import { describe, expect, test } from 'vitest';
import { findWorking } from '@/lib/workings/list';

const answerOf = (name: string, given: object) => {
  const working = findWorking(name);
  if (!working) throw new Error(`${name} is not in the list`);
  return working.answer(given);
};
const box = { lengthMm: 900, widthMm: 600, heightMm: 200, weightG: 9_000 };
const post = {
  lengthMm: 281.94,
  widthMm: 254,
  heightMm: 152.4,
  weightG: 1_360,
  divisorIn3PerLb: 166,
};
const load = { lengthMm: 1_200, widthMm: 1_000, heightMm: 900, weightG: 160_000 };

describe('billable-weight', () => {
  test('by 139 the sides are rounded up, and every step carries its numbers', () => {
    expect(answerOf('billable-weight', { ...box, divisorIn3PerLb: 139 })).toMatchObject({
      value: {
        billableLb: 50,
        working: [
          'The sides, rounded up to whole inches, are 36 × 24 × 8 in: 6912 in³.',
          '6912 ÷ 139, up to a whole pound, is 50 lb.',
          'On the scale it is 9000 g, 20 lb up to a whole pound.',
          'It is charged as 50 lb.',
        ],
      },
    });
  });

  test('by 166 a box of less than a cubic foot goes by the scale', () => {
    expect(answerOf('billable-weight', post)).toMatchObject({ value: { billableLb: 3 } });
  });

  test('what is said goes before what was published', () => {
    const measured = { ...box, divisorIn3PerLb: 139, sides: 'as_measured' };
    expect(answerOf('billable-weight', measured)).toMatchObject({ value: { billableLb: 48 } });
    expect(answerOf('billable-weight', { ...post, overIn3: 0, sides: 'up' })).toMatchObject({
      value: { billableLb: 5 },
    });
  });

  test.each([
    [{ divisorIn3PerLb: 0 }, /^divisorIn3PerLb: must be whole cubic inches/],
    [{ divisorIn3PerLb: '139' }, /^divisorIn3PerLb: must/],
    [{ weightG: 0 }, /^weightG: must be whole grams/],
    [{ weightG: 9e9 }, /^weightG: must/],
    [{ heightMm: -1 }, /^heightMm: must be a length/],
    [{ lengthMm: 'long' }, /^lengthMm: must be a length/],
    [{ sides: 'down' }, /^sides: must be "as_measured", "nearest" or "up"/],
    [{ overIn3: -1 }, /^overIn3: must/],
  ])('refuses %j', (wrong, line) => {
    const answer = answerOf('billable-weight', { ...box, divisorIn3PerLb: 139, ...wrong });
    expect(answer.ok ? 'taken' : answer.refusal).toMatch(line);
  });
});

describe('freight-class', () => {
  test('by the newest scale unless a day is said', () => {
    expect(answerOf('freight-class', load)).toMatchObject({
      value: { densityLbPerFt3: 9.2486, class: 100 },
    });
    const dense = { ...load, heightMm: 200, weightG: 200_000 };
    expect(answerOf('freight-class', dense)).toMatchObject({ value: { class: 50 } });
    expect(answerOf('freight-class', { ...dense, on: '2025-07-18' })).toMatchObject({
      value: { class: 60 },
    });
  });

  test.each([
    [{ on: '2026-02-30' }, /^on: must be a day in quotes/],
    [{ on: 20_260_101 }, /^on: must be a day/],
    [{ weightG: 0.5 }, /^weightG: must/],
    [{ widthMm: 0 }, /^widthMm: must be a length/],
  ])('refuses %j', (wrong, line) => {
    const answer = answerOf('freight-class', { ...load, ...wrong });
    expect(answer.ok ? 'taken' : answer.refusal).toMatch(line);
  });
});
