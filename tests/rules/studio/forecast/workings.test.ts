import { describe, expect, test } from 'vitest';
import { findWorking } from '@/lib/workings/list';

const answerOf = (name: string, given: unknown) => {
  const answer = findWorking(name)?.answer(given);
  if (!answer) throw new Error(`${name} is not in the list`);
  return answer;
};
const fixed = (days: number) => ({ shortest: days, likely: days, longest: days });
const pressing = { name: 'pressing', at: 'bench', bench: 'moulds', ...fixed(3) };
const firing = { name: 'the bisque kiln', at: 'kiln', cone: '06', ...fixed(2) };
const kiln = {
  ...{ name: 'large', volumeCm3: 100_000, cones: ['06'], turnsAWeek: 7 },
  ...{ leastFillPercent: 0, longestWaitDays: 1 },
};
const studio = {
  // A Thursday.
  ...{ todayOn: '2026-06-04', closedWeekdays: [6, 7], benches: [{ name: 'moulds', atOnce: 1 }] },
  kilns: [kiln],
  jobs: [{ name: 'terns', pieces: 6, pieceCm3: 900, steps: [pressing, firing] }],
};

describe('days, by name', () => {
  test('three days of a step, as published', () => {
    expect(answerOf('pert', { shortest: 2, likely: 3, longest: 6 })).toMatchObject({
      ok: true,
      value: { mean: 3.333333, sd: 0.666667 },
    });
  });
  test('three days at a bench from a Thursday end on the Tuesday, two in the kiln on the Thursday', () => {
    expect(answerOf('ready-date', { studio })).toMatchObject({
      ok: true,
      value: {
        days50: 7,
        days80: 7,
        days95: 7,
        working: ['pressing: 5 days.', 'the bisque kiln: 2 days.'],
      },
    });
  });
  test('of several jobs the last is told of, behind the others', () => {
    const two = { ...studio, jobs: [...studio.jobs, { ...studio.jobs[0], name: 'herons' }] };
    expect(answerOf('ready-date', { studio: two })).toMatchObject({ value: { days80: 11 } });
  });
  test('what cannot be told says what to do', () => {
    const cold = { ...studio, kilns: [] };
    expect(answerOf('ready-date', { studio: cold })).toMatchObject({
      value: { days80: null, working: [expect.stringContaining('No kiln fires to cone 06.')] },
    });
  });
  test.each([
    ['pert', { shortest: 4, likely: 3, longest: 6 }, /^likely: must lie between/],
    ['ready-date', {}, /^studio: must be/],
    ['ready-date', { studio: { ...studio, jobs: [] } }, /^studio\.jobs: must be a list/],
    [
      'ready-date',
      {
        studio: {
          ...studio,
          jobs: [{ ...studio.jobs[0], steps: [{ ...firing, cone: undefined }] }],
        },
      },
      /cone: must name the cone/,
    ],
  ])('%s refuses %j and names the key', (name, given, line) => {
    const answer = answerOf(name, given);
    expect(answer.ok ? '' : answer.refusal).toMatch(line);
  });
});
