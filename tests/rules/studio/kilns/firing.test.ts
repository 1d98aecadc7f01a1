import { describe, expect, test } from 'vitest';
import {
  coolingMinutes,
  coolingRefusalMessage,
  halvingMinutes,
} from '@/lib/studio/rules/kilns/cooling';
import {
  endsAt,
  firingRefusalMessage,
  firingTime,
  mayOpen,
  minutesWords,
  openBelowC,
  openRefusalMessage,
  type Segment,
} from '@/lib/studio/rules/kilns/firing';

const segment = (toC: number, rateCPerHour: number, soakMinutes = 0): Segment => ({
  ...{ toC, rateCPerHour, soakMinutes },
});
const slowBisque = [segment(90, 35, 180), segment(600, 60), segment(998, 110, 10)];

describe('a firing', () => {
  test('takes what its segments take, one after the other', () => {
    expect(firingTime({ fromC: 20, segments: slowBisque })).toEqual({
      ok: true,
      value: {
        segments: [
          { movingMinutes: 120, soakMinutes: 180, endsAfterMinutes: 300 },
          { movingMinutes: 510, soakMinutes: 0, endsAfterMinutes: 810 },
          { movingMinutes: 218, soakMinutes: 10, endsAfterMinutes: 1_038 },
        ],
        ...{ totalMinutes: 1_038, peakC: 998 },
      },
    });
  });

  test('that is cooled at a pace takes its time downwards too', () => {
    const cooled = firingTime({ fromC: 1_000, segments: [segment(800, 100, 30)] });
    expect(cooled).toMatchObject({ value: { totalMinutes: 150, peakC: 1_000 } });
  });

  test('a stretch is rounded up to whole minutes', () => {
    const short = firingTime({ fromC: 20, segments: [segment(21, 59)] });
    expect(short).toMatchObject({ value: { totalMinutes: 2 } });
  });

  test('ends at instants, over midnight and the change of clocks', () => {
    const worked = firingTime({ fromC: 20, segments: slowBisque });
    const begunAt = new Date('2026-03-08T04:00:00Z');
    expect(worked.ok && endsAt(worked.value, begunAt).map((at) => at.toISOString())).toEqual([
      '2026-03-08T09:00:00.000Z',
      '2026-03-08T17:30:00.000Z',
      '2026-03-08T21:18:00.000Z',
    ]);
  });

  test.each<[number, Segment[], string, number | undefined]>([
    [20, [], 'no_segments', undefined],
    [20, Array.from({ length: 21 }, () => segment(30, 10)), 'no_segments', undefined],
    [-5, [segment(1_500, 0)], 'temperature_out_of_range', 0],
    [20, [segment(90, 35), segment(1_401, 0)], 'temperature_out_of_range', 2],
    [20, [segment(90.5, 35)], 'temperature_out_of_range', 1],
    [20, [segment(90, 0, -1)], 'rate_out_of_range', 1],
    [20, [segment(90, -35)], 'rate_out_of_range', 1],
    [20, [segment(90, 35, -1)], 'soak_out_of_range', 1],
    [20, [segment(90, 35, 4_321)], 'soak_out_of_range', 1],
    [20, [segment(90, 35), segment(90, 35)], 'nothing_happens', 2],
  ])('from %d %j: %s', (fromC, segments, code, place) => {
    const worked = firingTime({ fromC, segments });
    expect(worked).toMatchObject({ ok: false, refusal: { code } });
    if (worked.ok) return;
    if (place !== undefined) expect(worked.refusal).toMatchObject({ place });
    expect(firingRefusalMessage(worked.refusal)).toMatch(/^[A-Z].*\.$/);
  });

  test.each([
    [40, '40 min'],
    [540, '9 h'],
    [580, '9 h 40 min'],
  ])('%d minutes are said as %s', (minutes, words) => {
    expect(minutesWords(minutes)).toBe(words);
  });
});

describe('a kiln is not opened', () => {
  test.each([
    [null, 'temperature_not_read'],
    [Number.NaN, 'temperature_not_read'],
    [320, 'too_hot'],
    [openBelowC, 'too_hot'],
  ])('while it reads %s: %s', (readC, code) => {
    const told = mayOpen(readC);
    expect(told).toMatchObject({ ok: false, refusal: { code } });
    expect(!told.ok && openRefusalMessage(told.refusal)).toMatch(/^[A-Z].*\.$/);
  });

  test('and may be once it is below, by its maker’s limit or the common one', () => {
    expect(mayOpen(93)).toEqual({ ok: true, value: 'open' });
    expect(mayOpen(92, 60)).toMatchObject({ refusal: { code: 'too_hot', openBelowC: 60 } });
    expect(mayOpen(59, 60).ok).toBe(true);
  });

  test('it says how hot it is, and what goes before', () => {
    const told = mayOpen(320);
    expect(!told.ok && openRefusalMessage(told.refusal, 'F')).toBe(
      'It reads 608 °F: leave it shut until it is below 200 °F. Early air cracks glaze and ware, ' +
        'and what its maker says goes before this.',
    );
  });
});

describe('how long a kiln cools', () => {
  const at = (celsius: number, afterMinutes: number) => ({ celsius, afterMinutes });

  test('is told by two of its own readings', () => {
    const halving = halvingMinutes(at(1_020, 0), at(520, 240), 20);
    expect(halving.ok && halving.value).toBeCloseTo(240, 9);
    const of = { fromC: 1_020, roomC: 20, halving: 240 };
    expect(coolingMinutes({ ...of, toC: 520 })).toEqual({ ok: true, value: 240 });
    expect(coolingMinutes({ ...of, toC: 270 })).toEqual({ ok: true, value: 480 });
    expect(coolingMinutes({ ...of, toC: 93 })).toEqual({ ok: true, value: 907 });
    expect(coolingMinutes({ ...of, toC: 1_020 })).toEqual({ ok: true, value: 0 });
  });

  test.each([
    [halvingMinutes(at(500, 0), at(500, 60), 20), 'not_cooling'],
    [halvingMinutes(at(500, 60), at(400, 60), 20), 'not_cooling'],
    [halvingMinutes(at(500, 0), at(20, 60), 20), 'not_cooling'],
    [coolingMinutes({ fromC: 500, toC: 20, roomC: 20, halving: 240 }), 'never_so_cool'],
  ])('what cannot be told, row %#', (told, code) => {
    expect(told).toMatchObject({ ok: false, refusal: { code } });
    expect(!told.ok && coolingRefusalMessage(told.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});
