import { describe, expect, test } from 'vitest';
import { findWorking } from '@/lib/workings/list';

const answerOf = (name: string, given: unknown) => {
  const answer = findWorking(name)?.answer(given);
  if (!answer) throw new Error(`${name} is not in the list`);
  return answer;
};
const cost = {
  ...{ powerW: 11_520, centsPerKwh: '15' },
  stages: [
    { minutes: 420, dutyPercent: '15' },
    { minutes: 540, dutyPercent: '50' },
  ],
};
const loss = { lost: 3, of: 40, statedPercent: '5', weighsPieces: 20 };
const slip = {
  ...{ lengthMm: 150, widthMm: 150, depthMm: 20, shrinkagePercent: '12' },
  ...{ filledPercent: '100', casts: 6, sparePercent: '15', densityGPerMl: '1.75' },
};

describe('the studio’s calculations, by name', () => {
  test.each([
    ['cone-temperature', { cone: '06', rateCPerHour: 60 }, { celsius: 998, fahrenheit: 1_828 }],
    ['cone-temperature', { cone: '6', rateCPerHour: 150 }, { celsius: 1_243, fahrenheit: 2_269 }],
    ['firing-cost', cost, { wattHours: 63_936, cents: 959 }],
    ['loss-learned', loss, { share: 0.066667, low: 0.01878, high: 0.141487, ownShare: 0.666667 }],
    ['slip-volume', slip, { mouldHoldsMl: 661, ml: 4_561, g: 7_982 }],
  ])('%s of %j', (name, given, output) => {
    expect(answerOf(name, given)).toMatchObject({ ok: true, value: output });
  });

  test.each([
    ['cone-temperature', { cone: '15', rateCPerHour: 60 }, /^cone: must be a cone in quotes/],
    ['cone-temperature', { cone: 6, rateCPerHour: 60 }, /^cone: must be a cone in quotes/],
    ['cone-temperature', { cone: '6', rateCPerHour: 45 }, /^rateCPerHour: must be 15, 60 or 150/],
    ['cone-temperature', { cone: '022', rateCPerHour: 15 }, /^rateCPerHour: .* have no 15/],
    ['firing-cost', { ...cost, powerW: 0 }, /^powerW: must be the power/],
    ['firing-cost', { ...cost, stages: [] }, /^stages: must be a list/],
    [
      'firing-cost',
      { ...cost, stages: [{ minutes: 60, dutyPercent: '0' }] },
      /^stages\[0\]\.dutyPercent: must be more than "0"/,
    ],
    ['loss-learned', { ...loss, lost: 41 }, /^lost: must be no more than went through/],
    ['loss-learned', { ...loss, statedPercent: '0' }, /^statedPercent: must be more than "0"/],
    ['loss-learned', { ...loss, weighsPieces: 0 }, /^weighsPieces: must be the whole number/],
    ['slip-volume', { ...slip, filledPercent: '0' }, /^filledPercent: must be more than "0"/],
    ['slip-volume', { ...slip, densityGPerMl: '1' }, /^densityGPerMl: must be a decimal/],
    ['slip-volume', { ...slip, sparePercent: '100' }, /^sparePercent: must be a decimal/],
  ])('%s of %j is refused by its key', (name, given, line) => {
    const answer = answerOf(name, given);
    expect(answer.ok ? 'taken' : answer.refusal).toMatch(line);
  });
});
