import { z } from 'zod';
import { hangingHeight, liftingIndex, liftingLimit } from '@/lib/walls/rules';
import { withdrawalLb, withdrawalLbPerIn } from '@/lib/walls/rules/fixings/withdrawal';
import type { HangingHeight } from '@/lib/walls/rules/hanging';
import type { LiftMultipliers } from '@/lib/walls/rules/lifting/limit';
import { couplings } from '@/lib/walls/rules/lifting/table';
import { keys, lengthMm } from '@/lib/workings/atoms';
import { workedValue, type Working } from '@/lib/workings/working';

/** Millimetres in an inch, newtons in a pound of force. */
const mmPerInch = 25.4;
const newtonsPerPound = 4.4482216152605;

/** A number within two others. */
function within(least: number, most: number, must: string) {
  return z.number(must).min(least, must).max(most, must);
}

const cmMust = 'must be a number of centimetres, from 0 to 1000';
const couplingMust = 'must be "good", "fair" or "poor"';

const liftInput = keys({
  horizontalCm: within(0, 1_000, cmMust),
  verticalCm: within(0, 1_000, cmMust),
  travelCm: within(0, 1_000, cmMust),
  asymmetryDeg: within(0, 180, 'must be a number of degrees, from 0 to 180'),
  liftsPerMinute: within(0, 1_000, 'must be how often it is lifted in a minute, from 0 to 1000'),
  hours: within(0.001, 8, 'must be a number of hours above 0 and at most 8'),
  coupling: z.enum(couplings, couplingMust),
  loadKg: within(0.001, 100_000, 'must be a weight in kilograms, above 0 and at most 100000'),
});

/** What one person may lift, and how a load stands to it. */
export const liftingLimitWorking: Working<
  z.infer<typeof liftInput>,
  { limitKg: number; liftingIndex: number | null; multipliers: LiftMultipliers }
> = {
  name: 'lifting-limit',
  title: 'What one person may lift',
  formula:
    '23 kg × what the distance, the height, the way, the turn, the times and the grip leave of it; ' +
    'the index is the load divided by that.',
  source: 'Waters, Putz-Anderson and Garg, DHHS (NIOSH) Publication 94-110, 1994, revised 2021',
  caution:
    'Not for one hand, kneeling or sitting, narrow places, slippery floors, ladders, carrying, or ' +
    'a load that shifts; an index above 1 strains some, above 3 nearly everybody. No index means ' +
    'that the lift is not allowed at all.',
  example: {
    ...{ horizontalCm: 40, verticalCm: 30, travelCm: 60, asymmetryDeg: 0 },
    ...{ liftsPerMinute: 0.2, hours: 1, coupling: 'fair', loadKg: 18 },
  },
  input: liftInput,
  workOut: (input) => {
    const { limit: limitKg, multipliers } = workedValue(
      liftingLimit({
        ...input,
        horizontal: input.horizontalCm,
        vertical: input.verticalCm,
        travel: input.travelCm,
      }),
    );
    const index = liftingIndex(input.loadKg, limitKg);
    const parts = Object.values(multipliers).map(threePlaces).join(' × ');
    return {
      output: { limitKg, liftingIndex: index, multipliers },
      working: [
        `23 kg × ${parts} is ${threePlaces(limitKg)} kg.`,
        index === null
          ? 'So nothing may be lifted by hand: the lift is not allowed.'
          : `${input.loadKg} kg is ${threePlaces(index)} times that.`,
      ],
    };
  },
};

const gravityMust = 'must be the specific gravity of the wood, from 0.31 to 0.73';
const screwInput = keys({
  diameterMm: within(1.6, 31.75, 'must be the diameter of the screw in mm, from 1.6 to 31.75'),
  specificGravity: within(0.31, 0.73, gravityMust),
  penetrationMm: within(
    0.1,
    609.6,
    'must be how many mm of thread sit in the wood, from 0.1 to 609.6',
  ),
  kind: z.enum(['wood screw', 'lag screw'], 'must be "wood screw" or "lag screw"'),
});

/** What a screw holds when it is pulled out of wood. */
export const screwWithdrawal: Working<
  z.infer<typeof screwInput>,
  { loadN: number; loadLb: number }
> = {
  name: 'screw-withdrawal',
  title: 'What a screw holds in wood',
  formula:
    'Wood screw: 2850 × G² × D; lag screw: 1800 × G to the power of 1.5 × D to the power of 0.75; ' +
    'pounds for each inch of thread in side grain, D in inches.',
  source: 'AWC NDS 2018, equations 12.2-1 and 12.2-2',
  caution:
    'For a load that stays, take nine tenths of it; never in end grain, and the tip of a lag screw ' +
    'does not count. Local codes and a licensed contractor decide.',
  example: { diameterMm: 4.83, specificGravity: 0.5, penetrationMm: 38, kind: 'wood screw' },
  input: screwInput,
  workOut: ({ diameterMm, specificGravity: gravity, penetrationMm, kind }) => {
    const screw = { kind, diameterIn: diameterMm / mmPerInch, gravity };
    const loadLb = workedValue(withdrawalLb({ ...screw, threadIn: penetrationMm / mmPerInch }));
    const loadN = loadLb * newtonsPerPound;
    return {
      output: { loadN, loadLb },
      working: [
        `A ${kind} of ${diameterMm} mm holds ${threePlaces(withdrawalLbPerIn(screw))} lb for each inch of thread.`,
        `${penetrationMm} mm of it are ${threePlaces(loadLb)} lb, or ${threePlaces(loadN)} N.`,
      ],
    };
  },
};

const heightInput = keys({
  pieceHeightMm: lengthMm,
  cleatFromTopMm: within(0, 100_000, 'must be a length in millimetres, from 0 to 100000').transform(
    (mm) => Math.round(mm * 1_000),
  ),
  eyeHeightMm: lengthMm,
})
  .refine(({ pieceHeightMm, cleatFromTopMm }) => cleatFromTopMm < pieceHeightMm, {
    path: ['cleatFromTopMm'],
    message: 'must be less than the height of the piece',
  })
  .refine(({ pieceHeightMm, eyeHeightMm }) => Math.round(eyeHeightMm - pieceHeightMm / 2) >= 0, {
    path: ['eyeHeightMm'],
    message: 'must be at least half the height of the piece, or it stands below the floor',
  });

/** How high a piece and its cleat hang. */
export const hangingHeightWorking: Working<
  z.infer<typeof heightInput>,
  { cleatMm: number; topMm: number; bottomMm: number }
> = {
  name: 'hanging-height',
  title: 'How high a piece hangs',
  formula: 'Eye height + half the height of the piece − from its top down to the cleat.',
  source: 'Common practice: the middle of a piece at 57 to 60 inches (1450 to 1525 mm)',
  caution: 'Agree the height on the spot, with the outline taped to the wall.',
  example: { pieceHeightMm: 900, cleatFromTopMm: 150, eyeHeightMm: 1450 },
  input: heightInput,
  workOut: ({ pieceHeightMm: heightUm, cleatFromTopMm: cleatFromTopUm, eyeHeightMm: eyeUm }) => {
    const hung = workedValue(hangingHeight({ heightUm, cleatFromTopUm }, { by: 'eye', eyeUm }));
    const output = inMillimetres(hung);
    return {
      output,
      working: [
        `Half of ${heightUm / 1_000} mm above ${eyeUm / 1_000} mm puts its top at ${output.topMm} mm.`,
        `${cleatFromTopUm / 1_000} mm below that the cleat is at ${output.cleatMm} mm, the lower edge at ${output.bottomMm} mm.`,
      ],
    };
  },
};

function inMillimetres({ cleatUm, topUm, bottomUm }: HangingHeight) {
  return { cleatMm: cleatUm / 1_000, topMm: topUm / 1_000, bottomMm: bottomUm / 1_000 };
}

function threePlaces(number: number): number {
  return Math.round(number * 1_000) / 1_000;
}
