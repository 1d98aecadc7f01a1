import { randomUUID } from 'node:crypto';
import { keepPlanInput, type KeepPlanInput } from '@/lib/installation/input/plan/plan';
import { keepSurveyInput, type KeepSurveyInput } from '@/lib/installation/input/survey/survey';

/** A survey as its form sends it: wood studs, with an outlet; lengths in inches. */
export function aSurvey(
  commissionId: string,
  fields: Readonly<Record<string, unknown>> = {},
): KeepSurveyInput {
  return keepSurveyInput.parse({
    ...{ requestKey: randomUUID(), commissionId, seenVersion: '0', lengthUnit: 'in', rows: '2' },
    ...{ wall: 'wood_studs', provedHow: 'a magnet and an inspection hole' },
    ...{ studWood: 'hem_fir', studSpacingUm: '16', firstStudUm: '8', coverUm: '1/2' },
    ...{ wallWidthUm: '12 ft', ceilingUm: '96', servicesSought: 'yes', surveyedOn: '2026-05-12' },
    ...{ 'o0-kind': 'outlet', 'o0-words': '', 'o0-leftUm': '20', 'o0-bottomUm': '12' },
    ...{ 'o0-widthUm': '3', 'o0-heightUm': '5', 'o1-kind': '', 'o1-words': '' },
    ...fields,
  });
}

/** A plan as its form sends it: 48 × 30 in, 100 lb, screws through a cleat of plywood. */
export function aPlanAsked(
  commissionId: string,
  surveyId: string,
  fields: Readonly<Record<string, unknown>> = {},
): KeepPlanInput {
  return keepPlanInput.parse({
    ...{ requestKey: randomUUID(), commissionId, surveyId, lengthUnit: 'in' },
    ...{ widthUm: '48', heightUm: '30', depthUm: '2', weightG: '100', middleUm: '72' },
    ...{ heightBy: 'eye', eyeUm: '57', topUm: '', gapUm: '' },
    ...{ made: 'plywood', thicknessUm: '3/4', cleatHeightUm: '3 1/2', lengthUm: '' },
    ...{ fromTopUm: '5', bevelDeg: '45', railRatedG: '' },
    ...{ by: 'screw', screw: 'no_12', screwLengthUm: '3 1/2', anchor: 'sleeve', ratedPullG: '' },
    ...{ ratedPushG: '', embedUm: '', leastApartUm: '', perUpright: '', backingUm: '' },
    safetyFactor: '3',
    ...fields,
  });
}
