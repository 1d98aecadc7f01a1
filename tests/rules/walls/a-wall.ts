import type { FixingAsked, HangingAsked, PieceFacts } from '@/lib/walls/rules/plan/asked';
import type { PlanAsked } from '@/lib/walls/rules/plan/plan';
import type { WallFacts } from '@/lib/walls/rules/plan/wall';

/** Inches, in micrometres. */
export const inches = (number: number) => Math.round(number * 25_400);
/** Pounds, in grams. */
export const pounds = (number: number) => Math.round(number * 453.59237);

/** A wall of wood studs, 12 ft wide and 8 ft high, a stud under its sixth foot. */
export function aWall(facts: Partial<WallFacts> = {}): WallFacts {
  return {
    ...{ wall: 'wood_studs', studWood: 'spruce_pine_fir', studSpacingUm: inches(16) },
    ...{ firstStudUm: inches(8), studDepthUm: inches(3.5), steelGauge: null, coverUm: inches(0.5) },
    ...{ isPlasterSound: null, hasBacking: null, wallWidthUm: inches(144) },
    ...{ ceilingUm: inches(96), furnitureUm: null, servicesSought: true, isOutdoors: false },
    ...{ isOverPeople: false, quakes: false, obstacles: [] },
    ...facts,
  };
}

/** A relief of 48 × 30 in and 100 lb with its board. */
export function aPiece(facts: Partial<PieceFacts> = {}): PieceFacts {
  return {
    ...{ widthUm: inches(48), heightUm: inches(30), depthUm: inches(2), weightG: pounds(100) },
    ...facts,
  };
}

/** Screws through a bevelled cleat of plywood, the middle over the stud at 72 in. */
export function aHanging(asked: Partial<HangingAsked> = {}): HangingAsked {
  return {
    middleUm: inches(72),
    height: { by: 'eye', eyeUm: inches(57) },
    cleat: {
      ...{ made: 'plywood', thicknessUm: inches(0.75), heightUm: inches(3.5), lengthUm: null },
      ...{ fromTopUm: inches(5), bevelDeg: 45, railRatedG: null },
    },
    fixing: {
      ...{ by: 'screw', screw: 'no_12', lengthUm: inches(3.5) },
      ...{ isStainless: false, perUpright: null },
    },
    backingUm: null,
    safetyFactor: 3,
    ...asked,
  };
}

/** Sleeve anchors that their maker rates for 400 lb pulled out and 600 lb sideways. */
export const sleeves: Extract<FixingAsked, { by: 'anchor' }> = {
  ...{ by: 'anchor', anchor: 'sleeve', ratedPullG: pounds(400), ratedPushG: pounds(600) },
  ...{ embedUm: inches(2), leastApartUm: inches(4), isStainless: false, perUpright: null },
};

/** All three together. */
export function aPlan(of: Partial<PlanAsked> = {}): PlanAsked {
  return { wall: aWall(), piece: aPiece(), asked: aHanging(), ...of };
}
