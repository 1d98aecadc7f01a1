import { describe, expect, test } from 'vitest';
import { findWorking } from '@/lib/workings/list';

function answerOf(name: string, change: Record<string, unknown> = {}): unknown {
  const working = findWorking(name);
  if (!working) throw new Error(`${name} is not in the list`);
  const answer = working.answer({ ...working.example, ...change });
  return answer.ok ? answer.value : answer.refusal;
}

/** A figure, near enough. */
const about = (figure: number, places: number): unknown => expect.closeTo(figure, places);

describe('what a wall and a lift are worked out to', () => {
  test('a lift of 18 kg, 40 cm out, from 30 cm up by 60 cm', () => {
    expect(answerOf('lifting-limit')).toMatchObject({
      limitKg: about(10.572, 3),
      liftingIndex: about(1.703, 3),
      multipliers: { horizontal: 0.625, vertical: 0.865, frequency: 1, coupling: 0.95 },
    });
  });

  test('a lift too high is not allowed: no index', () => {
    expect(answerOf('lifting-limit', { verticalCm: 176 })).toMatchObject({
      ...{ limitKg: 0, liftingIndex: null },
      working: [expect.any(String), 'So nothing may be lifted by hand: the lift is not allowed.'],
    });
  });

  test('a No. 10 screw, 38 mm of it in Douglas fir', () => {
    expect(answerOf('screw-withdrawal')).toMatchObject({
      loadLb: about(202.7, 1),
      loadN: about(901.6, 1),
    });
  });

  test('a piece of 900 mm with its cleat 150 mm down, at 1450 mm', () => {
    expect(answerOf('hanging-height')).toMatchObject({
      ...{ cleatMm: 1_750, topMm: 1_900, bottomMm: 1_000 },
    });
  });

  test('45 kg on three studs hang on six screws', () => {
    const answer = answerOf('wall-fixings');
    expect(answer).toMatchObject({ fixings: 6, allowed: true, why: [], loadEachN: 104 });
  });

  test('a wall that nobody knows has no plan, and no figures', () => {
    const wall = {
      ...{ made: null, widthMm: null, ceilingMm: null, coverMm: null, studSpacingMm: null },
      ...{ firstStudMm: null, studWood: null, isOutdoors: false, isOverPeople: false },
      obstacles: [],
    };
    expect(answerOf('wall-fixings', { wall })).toMatchObject({
      ...{ fixings: null, loadEachN: null, safetyFactor: null, allowed: false },
      why: [expect.stringMatching(/^Nobody knows yet what this wall is made of: stop/)],
    });
  });
});

describe('what is not worked out, by the key that is wrong', () => {
  test.each<[string, Record<string, unknown>, RegExp]>([
    ['lifting-limit', { loadKg: 0 }, /^loadKg: must be a weight/],
    ['lifting-limit', { verticalCm: '30' }, /^verticalCm: must be a number of centimetres/],
    ['lifting-limit', { hours: 9 }, /^hours: must be a number of hours/],
    ['lifting-limit', { coupling: 'so-so' }, /^coupling: must be "good", "fair" or "poor"/],
    ['lifting-limit', { asymmetryDeg: 200 }, /^asymmetryDeg: must be/],
    ['screw-withdrawal', { diameterMm: 0 }, /^diameterMm: must be/],
    ['screw-withdrawal', { specificGravity: 1.2 }, /^specificGravity: must be/],
    ['screw-withdrawal', { kind: 'nail' }, /^kind: must be "wood screw" or "lag screw"/],
    ['hanging-height', { cleatFromTopMm: 900 }, /^cleatFromTopMm: must be less than the height/],
    ['hanging-height', { eyeHeightMm: 400 }, /^eyeHeightMm: must be at least half/],
    ['wall-fixings', { height: { by: 'ladder' } }, /^height: must be \{"by":"eye"/],
    ['wall-fixings', { fixing: { by: 'glue' } }, /^fixing: must be \{"by":"screw"/],
    ['wall-fixings', { safetyFactor: 'three' }, /^safetyFactor: must be how many times/],
  ])('%s of %o', (name, change, words) => {
    expect(answerOf(name, change)).toMatch(words);
  });

  test('an absurd weight is told with the plan', () => {
    const piece = { widthMm: 1_220, heightMm: 762, depthMm: 50, weightG: 0 };
    expect(answerOf('wall-fixings', { piece })).toMatchObject({
      allowed: false,
      why: [expect.stringMatching(/more than nothing/)],
    });
  });
});
