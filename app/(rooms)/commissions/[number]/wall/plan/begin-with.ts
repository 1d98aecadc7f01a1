import type { Sheet } from '@/lib/commissions/reads/sheet';
import type { FixingAskedKept } from '@/lib/installation/input/plan/asked';
import type { WeightKnown } from '@/lib/installation/reads/plan/weight';
import type { SurveyTold } from '@/lib/installation/reads/survey/told';
import { umPerInch } from '@/lib/units/rules';
import { furnitureGapUm } from '@/lib/walls/rules';
import type { HangingAsked } from '@/lib/walls/rules/plan/asked';

/** A form of a plan as it begins: the piece may not be known yet. */
export type PlanBegun = {
  readonly piece: { readonly [Side in keyof FixingAskedKept['piece']]: number | null };
  readonly hanging: HangingAsked;
};

/**
 * What the form of a plan begins with: the plan before, with the weight as it is known now, or else
 * what the request and the survey say and what is usual.
 */
export function beginWith(of: {
  sheet: Sheet;
  survey: SurveyTold;
  weight: WeightKnown | null;
  before: FixingAskedKept | null;
}): PlanBegun {
  const { sheet, survey, weight, before } = of;
  if (before) {
    const weightG = weight?.from === 'scale' ? weight.weightG : before.piece.weightG;
    return { ...before, piece: { ...before.piece, weightG } };
  }
  const { widthUm, heightUm, depthUm } = sheet.request;
  const { eyeHeightUm, hangSafetyPercent } = sheet.gallery;
  const middleUm = Math.round((survey.wallWidthUm ?? 0) / 2);
  const isOver = survey.furnitureUm !== null && survey.furnitureUm > 0;
  return {
    piece: { widthUm, heightUm, depthUm, weightG: weight?.weightG ?? null },
    hanging: {
      middleUm,
      height:
        isOver && survey.agreedMiddleUm === null
          ? { by: 'furniture', topUm: survey.furnitureUm ?? 0, gapUm: furnitureGapUm }
          : { by: 'eye', eyeUm: survey.agreedMiddleUm ?? eyeHeightUm },
      ...usual(survey, heightUm),
      safetyFactor: Math.round(hangSafetyPercent / 100),
    },
  };
}

const inches = (number: number) => Math.round(number * umPerInch);

function usual(
  { wall, isOutdoors }: SurveyTold,
  heightUm: number | null,
): Pick<HangingAsked, 'cleat' | 'fixing' | 'backingUm'> {
  const isWood = wall === 'wood_studs' || wall === 'plaster_on_lath' || wall === null;
  const isWet = isOutdoors === true;
  return {
    cleat: {
      ...{ made: isWet ? 'aluminium' : 'plywood', thicknessUm: inches(isWet ? 0.25 : 0.75) },
      ...{ heightUm: inches(3.5), lengthUm: null, bevelDeg: isWet ? 0 : 45, railRatedG: null },
      fromTopUm: Math.min(inches(5), Math.round((heightUm ?? inches(20)) / 4)),
    },
    fixing: isWood
      ? {
          ...{ by: 'screw', screw: 'no_12', lengthUm: inches(3.5) },
          ...{ isStainless: isWet, perUpright: null },
        }
      : {
          ...{ by: 'anchor', anchor: wall === 'brick' ? 'sleeve' : 'toggle', ratedPullG: 0 },
          ...{ ratedPushG: 0, embedUm: 0, leastApartUm: 0, isStainless: isWet, perUpright: null },
        },
    backingUm: null,
  };
}
