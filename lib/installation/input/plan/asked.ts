import { z } from 'zod';
import { screwNames } from '@/lib/walls/rules/fixings/screws';
import { anchorKinds, cleatsMade } from '@/lib/walls/rules/plan/asked';

const um = z.int().min(0).max(100_000_000);
const grams = z.int().min(0).max(100_000_000);
const perUpright = z.int().min(1).max(12).nullable();

/** A piece and how it is to hang, as a plan keeps it: whole micrometres and grams. */
export const fixingAskedInput = z.strictObject({
  piece: z.strictObject({ widthUm: um, heightUm: um, depthUm: um, weightG: grams }),
  hanging: z.strictObject({
    middleUm: um,
    height: z.discriminatedUnion('by', [
      z.strictObject({ by: z.literal('eye'), eyeUm: um }),
      z.strictObject({ by: z.literal('furniture'), topUm: um, gapUm: um }),
    ]),
    cleat: z.strictObject({
      made: z.enum(cleatsMade),
      ...{ thicknessUm: um, heightUm: um, lengthUm: um.nullable(), fromTopUm: um },
      bevelDeg: z.number().min(0).max(60),
      railRatedG: grams.nullable(),
    }),
    fixing: z.discriminatedUnion('by', [
      z.strictObject({
        by: z.literal('screw'),
        screw: z.enum(screwNames),
        ...{ lengthUm: um, isStainless: z.boolean(), perUpright },
      }),
      z.strictObject({
        by: z.literal('anchor'),
        anchor: z.enum(anchorKinds),
        ...{ ratedPullG: grams, ratedPushG: grams, embedUm: um, leastApartUm: um },
        ...{ isStainless: z.boolean(), perUpright },
      }),
    ]),
    backingUm: um.nullable(),
    safetyFactor: z.number().min(2).max(4),
  }),
});

/** What {@link fixingAskedInput} reads. */
export type FixingAskedKept = z.output<typeof fixingAskedInput>;
