import { describe, expect, test } from 'vitest';
import { adviceFor, planFixings, type FixingPlan } from '@/lib/walls/rules';
import type { Cleat, FixingAsked } from '@/lib/walls/rules/plan/asked';
import type { PlanAsked } from '@/lib/walls/rules/plan/plan';
import { aHanging, aPiece, aPlan, aWall, inches, pounds, sleeves } from './a-wall';

function planned(of: PlanAsked): FixingPlan {
  const plan = planFixings(of);
  if (!plan.ok) throw new Error(plan.refusal.map(({ code }) => code).join(', '));
  return plan.value;
}

const inInches = (um: number) => Math.round((um / 25_400) * 100) / 100;

describe('a relief of 100 lb on wood studs', () => {
  const plan = planned(aPlan());

  test('its middle is at eye height, the cleat behind it', () => {
    const { piece, cleat, cleatUm } = plan.place;
    expect([piece.leftUm, piece.bottomUm].map(inInches)).toEqual([48, 42]);
    expect(inInches(cleatUm)).toBe(67);
    expect([cleat.leftUm, cleat.widthUm].map(inInches)).toEqual([49, 46]);
  });

  test('the cleat is screwed to the three studs it meets, two in each', () => {
    expect(plan.atUms.map(inInches)).toEqual([56, 72, 88]);
    expect([plan.rows, plan.holes.length]).toEqual([2, 6]);
    const [upper, lower] = plan.holes;
    expect(inInches((upper?.yUm ?? 0) - (lower?.yUm ?? 0))).toBe(0.86);
    expect(((upper?.yUm ?? 0) + (lower?.yUm ?? 0)) / 2).toBeCloseTo(plan.place.cleatUm, -1);
  });

  test('each screw bears a sixth down, and the bevel presses it off as much', () => {
    expect(plan.pushEachG).toBe(Math.ceil(pounds(100) / 6));
    expect(plan.pullEachG).toBe(plan.pushEachG);
    expect(plan.loadEachG / plan.pushEachG).toBeCloseTo(Math.SQRT2, 3);
    expect(plan.factor).toBeGreaterThanOrEqual(3);
    expect(plan.bearsEachG / plan.loadEachG).toBeCloseTo(plan.factor, 2);
  });

  test('2 1/4 in of the screw sit in the wood: its length less cleat and board', () => {
    expect(inInches(plan.inWoodUm ?? 0)).toBe(2.25);
  });
});

test('a level rail is pulled only by what stands off the wall', () => {
  const cleat: Cleat = {
    ...{ made: 'aluminium', thicknessUm: inches(0.25), heightUm: inches(2), lengthUm: null },
    ...{ fromTopUm: inches(6), bevelDeg: 0, railRatedG: pounds(400) },
  };
  const plan = planned(aPlan({ asked: aHanging({ cleat }) }));
  // 100 lb, 1.25 in off the wall, 24 in above where it rests, over three places.
  expect(plan.pullEachG).toBe(Math.ceil((pounds(100) * 1.25) / 24 / 3));
});

test('the rail itself can be the weakest', () => {
  const cleat: Cleat = {
    ...{ made: 'aluminium', thicknessUm: inches(0.25), heightUm: inches(2), lengthUm: null },
    ...{ fromTopUm: inches(6), bevelDeg: 0, railRatedG: pounds(250) },
  };
  const refused = planFixings(aPlan({ asked: aHanging({ cleat }) }));
  expect(refused.ok ? null : refused.refusal).toEqual([
    { code: 'too_weak', factor: pounds(250) / pounds(100), asked: 3 },
  ]);
});

test('over people the fixings are asked to bear it four times over', () => {
  const plan = planned(aPlan({ wall: aWall({ isOverPeople: true }) }));
  expect([plan.factorAsked, plan.rows]).toEqual([4, 3]);
  expect(plan.factor).toBeGreaterThanOrEqual(4);
});

test('above furniture its lower edge stands the gap above it', () => {
  const height = { by: 'furniture', topUm: inches(34), gapUm: inches(8) } as const;
  const wall = aWall({ furnitureUm: inches(34) });
  expect(planned(aPlan({ wall, asked: aHanging({ height }) })).place.piece.bottomUm).toBe(
    inches(42),
  );
});

test('an upright nearer to the middle bears more of it', () => {
  const piece = aPiece({ widthUm: inches(24), weightG: pounds(50) });
  const even = planned(aPlan({ piece, asked: aHanging({ middleUm: inches(64) }) }));
  const leaning = planned(aPlan({ piece, asked: aHanging({ middleUm: inches(65.5) }) }));
  expect(even.atUms).toEqual(leaning.atUms);
  expect(leaning.loadEachG).toBeGreaterThan(even.loadEachG);
});

test('in brick the anchors stand along the cleat, 16 in apart at most', () => {
  const wall = aWall({ wall: 'brick', coverUm: 0, studSpacingUm: null, firstStudUm: null });
  const plan = planned(aPlan({ wall, asked: aHanging({ fixing: sleeves }) }));
  expect(plan.atUms.map(inInches)).toEqual([50.5, 64.83, 79.17, 93.5]);
  expect(plan.inWoodUm).toBeNull();
  // 25 lb down and 25 lb off the wall: 25/400 + 25/600, both together.
  expect(plan.factor).toBeCloseTo(1 / (25 / 400 + 25 / 600), 3);
});

test('screws hold in wood that was built in wherever they are driven', () => {
  const wall = aWall({ wall: 'steel_studs', hasBacking: true });
  const plan = planned(aPlan({ wall, asked: aHanging({ backingUm: inches(1.5) }) }));
  expect(plan.atUms.length).toBeGreaterThanOrEqual(4);
  expect(plan.factor).toBeGreaterThanOrEqual(3);
});

test('a light piece may hang on toggles in board alone, four times over', () => {
  const wall = aWall({ wall: 'gypsum_board', studSpacingUm: null, firstStudUm: null });
  const toggles: FixingAsked = {
    ...{ ...sleeves, anchor: 'toggle', ratedPullG: pounds(80), ratedPushG: pounds(120) },
    embedUm: inches(2),
  };
  const piece = aPiece({ widthUm: inches(14), heightUm: inches(14), weightG: pounds(12) });
  const plan = planned(
    aPlan({ wall, piece, asked: aHanging({ fixing: toggles, safetyFactor: 2 }) }),
  );
  expect([plan.factorAsked, plan.holes.length]).toEqual([4, 2]);
});

test('a small piece hangs on the one stud under its middle', () => {
  const piece = aPiece({ widthUm: inches(12), heightUm: inches(12), weightG: pounds(14) });
  const plan = planned(aPlan({ piece }));
  expect([plan.atUms.map(inInches), plan.rows]).toEqual([[72], 1]);
});

test('a thicker board between leaves a screw less to bear sideways', () => {
  const thin = planned(aPlan({ wall: aWall({ coverUm: 0 }) }));
  const thick = planned(aPlan({ wall: aWall({ coverUm: inches(0.625) }) }));
  expect(thick.bearsPushG).toBeLessThan(thin.bearsPushG * 0.8);
});

test('outdoors wood holds seven tenths of what it holds indoors', () => {
  const cleat: Cleat = {
    ...{ made: 'aluminium', thicknessUm: inches(0.25), heightUm: inches(3.5), lengthUm: null },
    ...{ fromTopUm: inches(6), bevelDeg: 0, railRatedG: pounds(900) },
  };
  const fixing: FixingAsked = {
    ...{ by: 'screw', screw: 'lag_1_4', lengthUm: inches(3.5), isStainless: true },
    perUpright: 2,
  };
  const asked = aHanging({ cleat, fixing });
  const dry = planned(aPlan({ asked }));
  const wet = planned(aPlan({ asked, wall: aWall({ isOutdoors: true }) }));
  expect(wet.bearsPushG / dry.bearsPushG).toBeCloseTo(0.7, 3);
  expect(wet.bearsPullG / dry.bearsPullG).toBeCloseTo(0.7, 3);
});

describe('what is minded at the wall', () => {
  const advice = (of: Partial<PlanAsked>) => adviceFor(aPlan(of), 'in').join(' ');

  test('the stop screw, the spacer bar, and who decides stand on every plan', () => {
    expect(advice({})).toMatch(/spacer bar of 3\/4 in.*stop screw/);
    expect(advice({})).toMatch(/a licensed contractor decide; this is no engineer’s approval\.$/);
  });

  test.each<[string, Partial<PlanAsked>, RegExp]>([
    ['wires nobody looked for', { wall: aWall({ servicesSought: null }) }, /Nobody has looked/],
    ['a heavy piece', {}, /better made as several panels/],
    ['a quake', { wall: aWall({ quakes: true }) }, /second fixing at the bottom/],
    ['a bed below', { wall: aWall({ isOverPeople: true }) }, /a second hold/],
    ['plaster', { wall: aWall({ wall: 'plaster_on_lath' }) }, /Tape the plaster/],
    ['a slab', { wall: aWall({ wall: 'concrete' }) }, /post-tensioned/],
    [
      'weather',
      { wall: aWall({ isOutdoors: true }) },
      /let water run off.*After rain it weighs more/,
    ],
    [
      'brick',
      { wall: aWall({ wall: 'brick' }), asked: aHanging({ fixing: sleeves }) },
      /the joint/,
    ],
  ])('%s', (_what, of, words) => {
    expect(advice(of)).toMatch(words);
  });

  test('a piece that one can hold is not told to be split', () => {
    expect(advice({ piece: aPiece({ weightG: pounds(30) }) })).not.toMatch(/several panels/);
  });
});
