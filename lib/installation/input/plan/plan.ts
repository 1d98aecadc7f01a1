import { z } from 'zod';
import { known } from '@/lib/commissions/input/atoms';
import { inOwnUnits, lengthOrNothing } from '@/lib/installation/input/survey/typed';
import { lengthInput, weightInput } from '@/lib/units/input';
import { screwNames } from '@/lib/walls/rules/fixings/screws';
import { anchorKinds, cleatsMade, type FixingAsked } from '@/lib/walls/rules/plan/asked';
import type { FixingAskedKept } from './asked';

const needed = 'Write it: the plan is worked out with it.';

/** A whole number of fixings, or nothing: as many as it takes. */
const howMany = known(
  z
    .string()
    .regex(/^\d{1,2}$/, 'Write a whole number from 1 to 12, or leave it open.')
    .transform(Number)
    .refine(
      (many) => many >= 1 && many <= 12,
      'Write a whole number from 1 to 12, or leave it open.',
    ),
);
const degrees = z
  .string()
  .trim()
  .regex(/^\d{1,2}(\.\d{1,2})?$/, 'Write degrees from 0 to 60.')
  .transform(Number)
  .refine((bevel) => bevel <= 60, 'Write degrees from 0 to 60.');

/**
 * The form of a fixing plan; a bare number is in the gallery's own unit. Of screw and anchor only
 * what belongs to the one that was chosen is asked for.
 */
export const keepPlanInput = z.preprocess(
  inOwnUnits,
  z
    .strictObject({
      requestKey: z.uuid(),
      commissionId: z.uuid(),
      /** The survey that was looked at. */
      surveyId: z.uuid(),
      ...{
        widthUm: lengthInput,
        heightUm: lengthInput,
        depthUm: lengthInput,
        weightG: weightInput,
      },
      middleUm: lengthOrNothing,
      heightBy: z.enum(['eye', 'furniture'], { error: 'Choose by what it hangs.' }),
      ...{
        eyeUm: known(lengthInput),
        topUm: known(lengthOrNothing),
        gapUm: known(lengthOrNothing),
      },
      made: z.enum(cleatsMade, { error: 'Choose what the cleat is made of.' }),
      ...{ thicknessUm: lengthInput, cleatHeightUm: lengthInput, lengthUm: known(lengthInput) },
      fromTopUm: lengthOrNothing,
      bevelDeg: degrees,
      railRatedG: known(weightInput),
      by: z.enum(['screw', 'anchor'], { error: 'Choose what it is fixed with.' }),
      screw: known(z.enum(screwNames, { error: 'Choose the screw.' })),
      screwLengthUm: known(lengthInput),
      anchor: known(z.enum(anchorKinds, { error: 'Choose the anchor.' })),
      ...{ ratedPullG: known(weightInput), ratedPushG: known(weightInput) },
      ...{ embedUm: known(lengthInput), leastApartUm: known(lengthInput) },
      isStainless: z.literal('yes').optional(),
      perUpright: howMany,
      backingUm: known(lengthInput),
      safetyFactor: z.enum(['2', '3', '4'], { error: 'Choose how many times over.' }),
    })
    .transform((form, context) => {
      const missing = missingOf(form);
      for (const path of missing) {
        context.addIssue({ code: 'custom', path: [path], message: needed });
      }
      if (missing.length > 0) return z.NEVER;
      const { requestKey, commissionId, surveyId } = form;
      return { requestKey, commissionId, surveyId, asked: askedOf(form) };
    }),
);

/** What {@link keepPlanInput} reads. */
export type KeepPlanInput = z.output<typeof keepPlanInput>;

/** What of the form may be left open, and is needed for what was chosen. */
type Open = {
  readonly heightBy: 'eye' | 'furniture';
  readonly eyeUm: number | null;
  readonly topUm: number | null;
  readonly gapUm: number | null;
  readonly by: 'screw' | 'anchor';
  readonly screw: (typeof screwNames)[number] | null;
  readonly screwLengthUm: number | null;
  readonly anchor: (typeof anchorKinds)[number] | null;
  readonly ratedPullG: number | null;
  readonly ratedPushG: number | null;
  readonly embedUm: number | null;
  readonly leastApartUm: number | null;
  readonly isStainless?: 'yes' | undefined;
  readonly perUpright: number | null;
};

function missingOf(form: Open): string[] {
  const heights = form.heightBy === 'eye' ? (['eyeUm'] as const) : (['topUm', 'gapUm'] as const);
  const fixings =
    form.by === 'screw'
      ? (['screw', 'screwLengthUm'] as const)
      : (['anchor', 'ratedPullG', 'ratedPushG', 'embedUm', 'leastApartUm'] as const);
  return [...heights, ...fixings].filter((name) => form[name] === null);
}

type Form = Open & {
  readonly widthUm: number;
  readonly heightUm: number;
  readonly depthUm: number;
  readonly weightG: number;
  readonly middleUm: number;
  readonly made: (typeof cleatsMade)[number];
  readonly thicknessUm: number;
  readonly cleatHeightUm: number;
  readonly lengthUm: number | null;
  readonly fromTopUm: number;
  readonly bevelDeg: number;
  readonly railRatedG: number | null;
  readonly backingUm: number | null;
  readonly safetyFactor: '2' | '3' | '4';
};

function askedOf(form: Form): FixingAskedKept {
  const { widthUm, heightUm, depthUm, weightG, middleUm, backingUm } = form;
  const { made, thicknessUm, lengthUm, fromTopUm, bevelDeg } = form;
  const railRatedG = made === 'aluminium' ? form.railRatedG : null;
  const cleat = { made, thicknessUm, heightUm: form.cleatHeightUm, lengthUm, fromTopUm };
  return {
    piece: { widthUm, heightUm, depthUm, weightG },
    hanging: {
      ...{ middleUm, backingUm, safetyFactor: Number(form.safetyFactor) },
      height:
        form.heightBy === 'eye'
          ? { by: 'eye', eyeUm: form.eyeUm ?? 0 }
          : { by: 'furniture', topUm: form.topUm ?? 0, gapUm: form.gapUm ?? 0 },
      cleat: { ...cleat, bevelDeg, railRatedG },
      fixing: fixingOf(form),
    },
  };
}

function fixingOf(form: Open): FixingAsked {
  const { perUpright } = form;
  const isStainless = form.isStainless === 'yes';
  if (form.by === 'screw') {
    const { screw, screwLengthUm } = form;
    return {
      ...{ by: 'screw', screw: screw ?? 'no_12', lengthUm: screwLengthUm ?? 0 },
      ...{ isStainless, perUpright },
    };
  }
  const { anchor, ratedPullG, ratedPushG, embedUm, leastApartUm } = form;
  return {
    ...{ by: 'anchor', anchor: anchor ?? 'sleeve', ratedPullG: ratedPullG ?? 0 },
    ...{ ratedPushG: ratedPushG ?? 0, embedUm: embedUm ?? 0, leastApartUm: leastApartUm ?? 0 },
    ...{ isStainless, perUpright },
  };
}
