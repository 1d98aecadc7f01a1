import { z } from 'zod';
import { planFixings, planRefusalMessage, type FixingPlan } from '@/lib/walls/rules';
import { screwNames, studWoods } from '@/lib/walls/rules/fixings/screws';
import { anchorKinds, cleatsMade, type HangingAsked } from '@/lib/walls/rules/plan/asked';
import { obstacleKinds, wallKinds, type WallFacts } from '@/lib/walls/rules/plan/wall';
import { keys, lengthMm } from '@/lib/workings/atoms';
import type { Working } from '@/lib/workings/working';

const newtonsPerGram = 0.00980665;

const fromZeroMust = 'must be a length in millimetres, from 0 to 100000';
const fromZeroMm = z
  .number(fromZeroMust)
  .min(0, fromZeroMust)
  .max(100_000, fromZeroMust)
  .transform((mm) => Math.round(mm * 1_000));
const weightMust = 'must be a weight in whole grams, from 0 to 100000000';
const grams = z.int(weightMust).min(0, weightMust).max(100_000_000, weightMust);
const yesNo = z.boolean('must be true or false');
const perUpright = z
  .int('must be a whole number of fixings from 1 to 12, or null')
  .min(1, 'must be a whole number of fixings from 1 to 12, or null')
  .max(12, 'must be a whole number of fixings from 1 to 12, or null')
  .nullable();

const obstacle = keys({
  kind: z.enum(obstacleKinds, `must be one of ${obstacleKinds.join(', ')}`),
  leftMm: fromZeroMm,
  bottomMm: fromZeroMm,
  widthMm: lengthMm,
  heightMm: lengthMm,
});

const wallInput = keys({
  made: z.enum(wallKinds, `must be one of ${wallKinds.join(', ')}, or null`).nullable(),
  widthMm: lengthMm.nullable(),
  ceilingMm: lengthMm.nullable(),
  coverMm: fromZeroMm.nullable(),
  studSpacingMm: lengthMm.nullable(),
  firstStudMm: fromZeroMm.nullable(),
  studWood: z.enum(studWoods, `must be one of ${studWoods.join(', ')}, or null`).nullable(),
  isOutdoors: yesNo,
  isOverPeople: yesNo,
  obstacles: z.array(obstacle, 'must be a list of what is on the wall').max(100),
});

const heightMust =
  'must be {"by":"eye","eyeMm":1450} or {"by":"furniture","topMm":900,"gapMm":200}';
const height = z.union(
  [
    keys({ by: z.literal('eye'), eyeMm: lengthMm }),
    keys({ by: z.literal('furniture'), topMm: fromZeroMm, gapMm: fromZeroMm }),
  ],
  heightMust,
);

const cleat = keys({
  made: z.enum(cleatsMade, `must be one of ${cleatsMade.join(', ')}`),
  thicknessMm: lengthMm,
  heightMm: lengthMm,
  fromTopMm: fromZeroMm,
  bevelDeg: z
    .number('must be a number of degrees from 0 to 60')
    .min(0, 'must be a number of degrees from 0 to 60')
    .max(60, 'must be a number of degrees from 0 to 60'),
  railRatedG: grams.nullable(),
});

const fixingMust =
  'must be {"by":"screw","screw":"no_10","lengthMm":76.2,"isStainless":false,"perUpright":null} or ' +
  '{"by":"anchor","anchor":"sleeve","ratedPullG":90000,"ratedPushG":120000,"embedMm":51,' +
  '"leastApartMm":76,"isStainless":false,"perUpright":null}';
const fixing = z.union(
  [
    keys({
      by: z.literal('screw'),
      screw: z.enum(screwNames),
      lengthMm,
      isStainless: yesNo,
      perUpright,
    }),
    keys({
      by: z.literal('anchor'),
      anchor: z.enum(anchorKinds),
      ratedPullG: grams,
      ratedPushG: grams,
      embedMm: fromZeroMm,
      leastApartMm: fromZeroMm,
      isStainless: yesNo,
      perUpright,
    }),
  ],
  fixingMust,
);

const fixingsInput = keys({
  piece: keys({ widthMm: lengthMm, heightMm: lengthMm, depthMm: lengthMm, weightG: grams }),
  wall: wallInput,
  middleMm: fromZeroMm,
  height,
  cleat,
  fixing,
  safetyFactor: z.number('must be how many times over it is to be borne, from 2 to 4'),
});
type FixingsInput = z.infer<typeof fixingsInput>;

/** What the calculation answers: newtons for each fixing, and every reason against it. */
type FixingsOutput = {
  readonly fixings: number | null;
  readonly loadEachN: number | null;
  readonly pushEachN: number | null;
  readonly pullEachN: number | null;
  readonly bearsEachN: number | null;
  readonly safetyFactor: number | null;
  readonly allowed: boolean;
  readonly why: readonly string[];
};

const exampleWall = {
  ...{ made: 'wood_studs', widthMm: 3_600, ceilingMm: 2_440, coverMm: 12.7, studSpacingMm: 406.4 },
  ...{ firstStudMm: 174.4, studWood: 'spruce_pine_fir', isOutdoors: false, isOverPeople: false },
  obstacles: [],
};

/** How a piece is fixed to a wall. */
export const wallFixings: Working<FixingsInput, FixingsOutput> = {
  name: 'wall-fixings',
  title: 'What holds a piece on its wall',
  formula:
    'The weight is shared by the studs that the cleat meets; each fixing bears its share down and ' +
    'off the wall, and what it may bear is divided by that.',
  source:
    'AWC NDS 2018, sections 12.2 to 12.4, for screws in wood under a permanent load; the maker’s ' +
    'rating for anchors; plain statics; the rest is common practice',
  caution:
    'Check on site; local codes and a licensed contractor decide. It is no engineer’s approval, ' +
    'and there is never a plan for a wall that nobody knows.',
  example: {
    piece: { widthMm: 1_220, heightMm: 762, depthMm: 50, weightG: 45_000 },
    wall: exampleWall,
    middleMm: 1_800,
    height: { by: 'eye', eyeMm: 1_450 },
    cleat: {
      ...{ made: 'plywood', thicknessMm: 19, heightMm: 89, fromTopMm: 120 },
      ...{ bevelDeg: 45, railRatedG: null },
    },
    fixing: {
      ...{ by: 'screw', screw: 'no_12', lengthMm: 76.2 },
      ...{ isStainless: false, perUpright: null },
    },
    safetyFactor: 3,
  },
  input: fixingsInput,
  workOut: (input) => {
    const { widthMm: widthUm, heightMm: heightUm, depthMm: depthUm, weightG } = input.piece;
    const piece = { widthUm, heightUm, depthUm, weightG };
    const planned = planFixings({ wall: wallOf(input), piece, asked: askedOf(input) });
    if (planned.ok) return allowed(planned.value);
    const why = planned.refusal.map((reason) => planRefusalMessage(reason, 'mm'));
    return { output: { ...nothing, allowed: false, why }, working: ['There is no plan.', ...why] };
  },
};

const nothing = {
  ...{ fixings: null, loadEachN: null, pushEachN: null, pullEachN: null },
  ...{ bearsEachN: null, safetyFactor: null },
};

function allowed(plan: FixingPlan) {
  const [loadEachN, bearsEachN] = [newtons(plan.loadEachG), newtons(plan.bearsEachG)];
  const [pushEachN, pullEachN] = [newtons(plan.pushEachG), newtons(plan.pullEachG)];
  const fixings = plan.holes.length;
  const output = { fixings, loadEachN, pushEachN, pullEachN, bearsEachN };
  return {
    output: { ...output, safetyFactor: plan.factor, allowed: true, why: [] },
    working: [
      `${fixings} fixings: ${plan.rows} at each of ${plan.atUms.length} places.`,
      `The one that bears most has ${pushEachN} N down and ${pullEachN} N off the wall, together ${loadEachN} N.`,
      `That way it may bear ${bearsEachN} N, ${Math.floor(plan.factor * 10) / 10} times as much; ${plan.factorAsked} times is asked.`,
    ],
  };
}

function newtons(grams: number): number {
  return Math.round(grams * newtonsPerGram * 10) / 10;
}

function wallOf({ wall }: FixingsInput): WallFacts {
  return {
    ...{ wall: wall.made, studWood: wall.studWood, studSpacingUm: wall.studSpacingMm },
    ...{ firstStudUm: wall.firstStudMm, coverUm: wall.coverMm, wallWidthUm: wall.widthMm },
    ...{ ceilingUm: wall.ceilingMm, isOutdoors: wall.isOutdoors, isOverPeople: wall.isOverPeople },
    ...{ studDepthUm: null, steelGauge: null, isPlasterSound: null, hasBacking: null },
    ...{ furnitureUm: null, servicesSought: null, quakes: null },
    obstacles: wall.obstacles.map(({ kind, leftMm, bottomMm, widthMm, heightMm }) => ({
      ...{ kind, words: '', leftUm: leftMm, bottomUm: bottomMm },
      ...{ widthUm: widthMm, heightUm: heightMm },
    })),
  };
}

function askedOf(input: FixingsInput): HangingAsked {
  const { cleat: onWall, fixing: into, height: by } = input;
  return {
    middleUm: input.middleMm,
    height:
      by.by === 'eye'
        ? { by: 'eye', eyeUm: by.eyeMm }
        : { by: 'furniture', topUm: by.topMm, gapUm: by.gapMm },
    cleat: {
      ...{ made: onWall.made, thicknessUm: onWall.thicknessMm, heightUm: onWall.heightMm },
      ...{ lengthUm: null, fromTopUm: onWall.fromTopMm, bevelDeg: onWall.bevelDeg },
      railRatedG: onWall.railRatedG,
    },
    fixing:
      into.by === 'screw'
        ? { ...into, lengthUm: into.lengthMm }
        : { ...into, embedUm: into.embedMm, leastApartUm: into.leastApartMm },
    backingUm: null,
    safetyFactor: input.safetyFactor,
  };
}
