import { describe, expect, test } from 'vitest';
import { handsFor, hangingHeight, liftingLimit, liftRefusalMessage } from '@/lib/walls/rules';
import type { Hands, HandsTold, Lift, LiftRefusal, Raising } from '@/lib/walls/rules';
import { inches, pounds } from './a-wall';

const lift: Lift = {
  ...{ horizontal: 25, vertical: 75, travel: 50, asymmetryDeg: 0 },
  ...{ liftsPerMinute: 0.2, hours: 1, coupling: 'good' },
};

test.each<[string, Partial<Lift>, LiftRefusal['code']]>([
  ['below zero', { vertical: -1 }, 'not_a_lift'],
  ['no number', { horizontal: Number.NaN }, 'not_a_lift'],
  ['without end', { travel: Infinity }, 'not_a_lift'],
  ['more than half a turn', { asymmetryDeg: 181 }, 'turned_too_far'],
  ['no time', { hours: 0 }, 'over_eight_hours'],
  ['more than a working day', { hours: 8.1 }, 'over_eight_hours'],
])('a lift that is %s cannot be judged', (_what, change, code) => {
  const told = liftingLimit({ ...lift, ...change });
  expect(told.ok ? null : told.refusal.code).toBe(code);
  expect(told.ok ? '' : liftRefusalMessage(told.refusal)).toMatch(/^[A-Z].*\.$/);
});

const relief: Raising = {
  ...{ weightG: pounds(100), widthUm: inches(48), heightUm: inches(30), depthUm: inches(2) },
  ...{ standsAtUm: 0, bottomUm: inches(42) },
};

function told(change: Partial<Raising>): HandsTold {
  const hands = handsFor({ ...relief, ...change }, 'in');
  if (!hands.ok) throw new Error(hands.refusal.code);
  return hands.value;
}

describe('who lifts a piece', () => {
  const small = { widthUm: inches(16), heightUm: inches(16), bottomUm: inches(49) };
  test.each<[string, Partial<Raising>, Hands, Hands, Hands]>([
    ['12 lb', { ...small, weightG: pounds(12) }, 'one', 'one', 'one'],
    ['36 lb', { ...small, weightG: pounds(36) }, 'two', 'two', 'one'],
    ['100 lb', {}, 'lift', 'lift', 'two'],
    ['101 lb', { weightG: pounds(101) }, 'lift', 'lift', 'three'],
    ['151 lb', { weightG: pounds(151) }, 'lift', 'lift', 'lift'],
    ['12 lb, five feet wide', { weightG: pounds(12), widthUm: inches(60) }, 'two', 'one', 'two'],
    [
      '12 lb, above eight feet',
      { weightG: pounds(12), bottomUm: inches(70) },
      'lift',
      'lift',
      'lift',
    ],
  ])('%s: %s', (...[, change, advised, byEquation, byPractice]) => {
    expect(told(change)).toMatchObject({ advised, byEquation, byPractice });
  });

  test('two lift two thirds of the sum, three a half of it', () => {
    const [one, two, three] = told({}).shares.map(({ limitG }) => limitG);
    expect((two ?? 0) / (one ?? 1)).toBeCloseTo(4 / 3, 3);
    expect((three ?? 0) / (one ?? 1)).toBeCloseTo(3 / 2, 3);
  });

  test('both ends of the lift are judged, and the worse one counts', () => {
    const [one] = told({}).shares;
    const fromTheFloor = liftingLimit({
      ...{ ...lift, coupling: 'fair', horizontal: 25, vertical: 38.1, travel: 106.68 },
    });
    const toTheWall = liftingLimit({
      ...{ ...lift, coupling: 'fair', horizontal: 25, vertical: 144.78, travel: 106.68 },
    });
    const limits = [fromTheFloor, toTheWall].map((end) => (end.ok ? end.value.limit : 0));
    expect(one?.limitG).toBe(Math.floor(Math.min(...limits) * 1_000));
  });

  test('it is said in words, with what practice would be content with', () => {
    const words = told({}).words.join(' ');
    expect(words).toMatch(/^Lift 100 lb with a lift table, or hired hands with one\./);
    expect(words).toMatch(
      /Even three people would each lift 2 times what the lifting equation advises\./,
    );
    expect(words).toMatch(/Common practice would be content with two people\./);
    expect(told({ bottomUm: inches(70) }).words.join(' ')).toMatch(/allows no lift by hand at all/);
  });

  test.each<[string, Partial<Raising>]>([
    ['nothing', { weightG: 0 }],
    ['less than nothing', { weightG: -1 }],
    ['no depth', { depthUm: 0 }],
    ['below the floor', { bottomUm: -1 }],
  ])('%s is no lift', (_what, change) => {
    expect(handsFor({ ...relief, ...change }, 'in')).toEqual({
      ok: false,
      refusal: { code: 'nothing_to_lift' },
    });
  });
});

describe('how high a piece hangs', () => {
  const eye = { by: 'eye', eyeUm: inches(57) } as const;
  test('above furniture its lower edge stands the gap above it', () => {
    const by = { by: 'furniture', topUm: inches(34), gapUm: inches(8) } as const;
    const hung = hangingHeight({ heightUm: inches(20), cleatFromTopUm: inches(4) }, by);
    expect(hung).toEqual({
      ok: true,
      value: { bottomUm: inches(42), topUm: inches(62), cleatUm: inches(58) },
    });
  });

  test.each<[number, number, string]>([
    [0, 0, 'piece_has_no_height'],
    [inches(20), inches(20), 'fixing_off_the_piece'],
    [inches(20), -1, 'fixing_off_the_piece'],
    [inches(120), inches(4), 'lower_edge_below_the_floor'],
  ])('%d tall with its fixing at %d: %s', (heightUm, cleatFromTopUm, code) => {
    const hung = hangingHeight({ heightUm, cleatFromTopUm }, eye);
    expect(hung.ok ? null : hung.refusal.code).toBe(code);
  });
});
