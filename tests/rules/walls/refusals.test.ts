import { expect, test } from 'vitest';
import { planFixings, planRefusalMessage, type PlanRefusalCode } from '@/lib/walls/rules';
import type { Cleat, FixingAsked, HangingAsked } from '@/lib/walls/rules/plan/asked';
import type { PlanAsked } from '@/lib/walls/rules/plan/plan';
import type { Obstacle } from '@/lib/walls/rules/plan/wall';
import { aHanging, aPiece, aPlan, aWall, inches, pounds, sleeves } from './a-wall';

const cleat = aHanging().cleat;
const screw: Extract<FixingAsked, { by: 'screw' }> = {
  ...{ by: 'screw', screw: 'no_12', lengthUm: inches(3.5) },
  ...{ isStainless: false, perUpright: null },
};
const rail: Cleat = { ...cleat, made: 'aluminium', bevelDeg: 0, railRatedG: pounds(500) };
const asking = (asked: Partial<HangingAsked>, rest: Partial<PlanAsked> = {}) =>
  aPlan({ asked: aHanging(asked), ...rest });
const over = (kind: Obstacle['kind'], left: number, bottom: number): Obstacle => ({
  ...{ kind, words: '', leftUm: inches(left), bottomUm: inches(bottom) },
  ...{ widthUm: inches(3), heightUm: inches(5) },
});

/** One case for every reason: what is asked, and the words that explain it. */
const cases: Record<PlanRefusalCode, [PlanAsked, RegExp]> = {
  wall_not_known: [aPlan({ wall: aWall({ wall: null }) }), /stop, and prove it/],
  no_such_weight: [
    aPlan({ piece: aPiece({ weightG: 0 }) }),
    /more than nothing and at most 300 lb/,
  ],
  no_such_size: [
    aPlan({ piece: aPiece({ depthUm: 0 }) }),
    /three sides above zero, none over 192 in/,
  ],
  factor_out_of_range: [asking({ safetyFactor: 1 }), /two to four times/],
  board_alone: [aPlan({ wall: aWall({ wall: 'gypsum_board' }) }), /must not hang on gypsum board/],
  plaster_not_sound: [
    aPlan({ wall: aWall({ wall: 'plaster_on_lath', isPlasterSound: false }) }),
    /The plaster is loose/,
  ],
  ceiling_not_known: [aPlan({ wall: aWall({ ceilingUm: null }) }), /floor to the ceiling/],
  cover_not_known: [aPlan({ wall: aWall({ coverUm: null }) }), /how thick the board/],
  studs_not_known: [aPlan({ wall: aWall({ firstStudUm: null }) }), /Find the studs first/],
  wood_outdoors: [
    asking({ fixing: { ...screw, isStainless: true } }, { wall: aWall({ isOutdoors: true }) }),
    /No wood outdoors/,
  ],
  rusts_outdoors: [asking({ cleat: rail }, { wall: aWall({ isOutdoors: true }) }), /stainless/],
  wrong_fixing: [asking({ fixing: sleeves }), /Into wood studs go screws/],
  steel_too_light: [
    asking(
      { fixing: { ...sleeves, anchor: 'toggle' } },
      { wall: aWall({ wall: 'steel_studs', steelGauge: 25 }) },
    ),
    /light steel/,
  ],
  backing_not_measured: [asking({ backingUm: inches(1.5) }), /wood is that was built in/],
  cleat_off_the_piece: [
    asking({ cleat: { ...cleat, lengthUm: inches(50) } }),
    /has to be behind the piece/,
  ],
  below_the_floor: [
    asking({ height: { by: 'eye', eyeUm: inches(10) } }),
    /would be 5 in below the floor/,
  ],
  does_not_fit: [
    aPlan({ piece: aPiece({ heightUm: inches(95) }) }),
    /It is 95 in tall, and only 96 in are free/,
  ],
  no_room_above: [
    aPlan({ piece: aPiece({ heightUm: inches(84) }) }),
    /top would be at 99 in.*middle at 52 1\/2 in at most/,
  ],
  beyond_the_wall: [asking({ middleUm: inches(20) }), /over the end of the wall/],
  behind_furniture: [
    aPlan({ wall: aWall({ furnitureUm: inches(43) }) }),
    /lower edge would be at 42 in, behind what stands there up to 43 in/,
  ],
  hits_obstacle: [
    aPlan({ wall: aWall({ obstacles: [over('vent', 60, 60)] }) }),
    /It would cover a vent/,
  ],
  fixing_near_services: [
    aPlan({ wall: aWall({ obstacles: [over('outlet', 71, 12)] }) }),
    /The fixing at 72 in would be drilled where an outlet/,
  ],
  too_few_studs: [
    aPlan({ wall: aWall({ studSpacingUm: inches(24) }) }),
    /The cleat meets 2 studs, and 100 lb want 3/,
  ],
  middle_beside_studs: [
    aPlan({
      ...{ piece: aPiece({ widthUm: inches(12), weightG: pounds(20) }) },
      asked: aHanging({ middleUm: inches(75) }),
    }),
    /middle of the piece has to be/,
  ],
  too_little_in_wood: [
    asking({ fixing: { ...screw, lengthUm: inches(2.5) } }),
    /Only 1 1\/4 in of the screw would sit in the wood; it takes at least 1 1\/2 in/,
  ],
  through_the_stud: [
    asking({ fixing: { ...screw, lengthUm: inches(5) } }),
    /would go 3 3\/4 in into wood that is 3 1\/2 in deep/,
  ],
  cleat_too_low: [
    asking({ cleat: { ...cleat, heightUm: inches(1.5) } }),
    /no room for 2 of these above each other/,
  ],
  cleat_too_short: [
    asking(
      { fixing: { ...sleeves, leastApartUm: inches(30) } },
      { wall: aWall({ wall: 'brick' }) },
    ),
    /no room for so many on a cleat of this length/,
  ],
  not_rated: [asking({ cleat: { ...rail, railRatedG: null } }), /maker of the rail rates/],
  too_weak: [
    asking({ fixing: { ...screw, screw: 'no_8', perUpright: 2 } }),
    /bear it \d\.\d times over, and 3 times is asked/,
  ],
};

test.each(Object.entries(cases))('%s is told with what it is about', (code, [of, words]) => {
  const planned = planFixings(of);
  const refusals = planned.ok ? [] : planned.refusal;
  expect(refusals.map((reason) => reason.code)).toContain(code);
  const told = refusals.find((reason) => reason.code === code);
  expect(told && planRefusalMessage(told, 'in')).toMatch(words);
});

test('what may hang is not refused for anything', () => {
  expect(planFixings(aPlan())).toMatchObject({ ok: true });
});

test('every reason is told at once, the wall before the place before the studs', () => {
  const planned = planFixings(
    asking(
      { middleUm: inches(10), fixing: sleeves },
      { wall: aWall({ ceilingUm: null, firstStudUm: null }) },
    ),
  );
  expect(planned.ok ? [] : planned.refusal.map(({ code }) => code)).toEqual([
    'wrong_fixing',
    'ceiling_not_known',
    'beyond_the_wall',
    'studs_not_known',
  ]);
});

test('of a wall that nobody knows nothing else is said', () => {
  const wall = aWall({ wall: null, ceilingUm: null, coverUm: null });
  expect(planFixings(aPlan({ wall }))).toEqual({
    ok: false,
    refusal: [{ code: 'wall_not_known' }],
  });
});

test.each([0, -5, Number.NaN, pounds(301), 1e12])('a weight of %d g is absurd', (weightG) => {
  const planned = planFixings(aPlan({ piece: aPiece({ weightG }) }));
  expect(planned.ok ? [] : planned.refusal.map(({ code }) => code)).toEqual(['no_such_weight']);
});

test('a piece of seven feet does not go up under the moulding of a wall of eight', () => {
  const crown: Obstacle = {
    ...{ kind: 'moulding', words: 'crown moulding', leftUm: 0, bottomUm: inches(92) },
    ...{ widthUm: inches(144), heightUm: inches(4) },
  };
  const wall = aWall({ obstacles: [crown] });
  const piece = aPiece({ heightUm: inches(84), widthUm: inches(40), weightG: pounds(120) });
  const atEye = planFixings(aPlan({ wall, piece }));
  expect(atEye.ok ? [] : atEye.refusal).toContainEqual({
    ...{ code: 'no_room_above', topUm: inches(99), clearUm: inches(92) },
    highestMiddleUm: inches(92 - 1.5 - 42),
  });
  const low = aHanging({ height: { by: 'eye', eyeUm: inches(48.5) } });
  expect(planFixings(aPlan({ wall, piece, asked: low }))).toMatchObject({ ok: true });
  // It fits under the crown, and cannot be lifted over its cleat.
  const tight = aHanging({ height: { by: 'eye', eyeUm: inches(49.5) } });
  const tried = planFixings(aPlan({ wall, piece, asked: tight }));
  expect(tried.ok ? [] : tried.refusal.map(({ code }) => code)).toEqual(['no_room_above']);
});
