import { z } from 'zod';
import { clayWeightG, wetUm } from '@/lib/clay/rules';
import { absorptionOf, type Absorption } from '@/lib/clay/rules/absorption';
import { mouldHoldsMl, slipToMix } from '@/lib/clay/rules/slip';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { decimalText, keys, lengthMm } from '@/lib/workings/atoms';
import { workedValue, type Working } from '@/lib/workings/working';

const shrinkageMust = 'must be a decimal in quotes from 0 to less than 50, such as "8"';
const shrinkagePercent = z
  .string(shrinkageMust)
  .refine((percent) => wetUm(1, percent).ok, shrinkageMust);
const claySizeInput = keys({
  firedMm: lengthMm,
  shrinkagePercent,
});

/** How large to make a piece wet for the size it is to have fired. */
export const claySize: Working<z.infer<typeof claySizeInput>, { wetMm: number }> = {
  name: 'clay-size',
  title: 'The wet size of a piece',
  formula: 'Fired size ÷ (1 − shrinkage ÷ 100).',
  source: 'ASTM C326, total linear shrinkage on the plastic length',
  caution: 'Each lot of clay shrinks in its own way: measure a bar of this lot in your own kiln.',
  example: { firedMm: 254, shrinkagePercent: '8' },
  input: claySizeInput,
  workOut: ({ firedMm: firedUm, shrinkagePercent }) => {
    const wetMm = workedValue(wetUm(firedUm, shrinkagePercent)) / 1_000;
    return {
      output: { wetMm },
      working: [
        `The clay loses ${shrinkagePercent}% of its wet length.`,
        `${firedUm / 1_000} mm ÷ (1 − ${shrinkagePercent} ÷ 100) is ${wetMm} mm.`,
      ],
    };
  },
};

const densityMust = 'must be a number from 0.5 to 5, in grams for each cubic centimetre';
const clayWeightInput = keys({
  lengthMm,
  widthMm: lengthMm,
  thicknessMm: lengthMm,
  densityGPerCm3: z
    .number(densityMust)
    .min(0.5, densityMust)
    .max(5, densityMust)
    .transform(String)
    .refine((density) => parseDecimal(density) !== null, densityMust),
});

/** What a flat piece weighs when it is fired. */
export const clayWeight: Working<z.infer<typeof clayWeightInput>, { weightG: number }> = {
  name: 'clay-weight',
  title: 'The fired weight of a piece',
  formula: 'Length × width × average thickness × density.',
  source: 'Volume times density; densities of fired clay are common practice',
  caution: 'A reckoning for the proposal: weigh the finished piece before anything is hung.',
  example: { lengthMm: 254, widthMm: 254, thicknessMm: 11, densityGPerCm3: 1.9 },
  input: clayWeightInput,
  workOut: (input) => {
    const { lengthMm: lengthUm, widthMm: widthUm, thicknessMm: thicknessUm } = input;
    const { densityGPerCm3 } = input;
    const weightG = workedValue(clayWeightG({ lengthUm, widthUm, thicknessUm, densityGPerCm3 }));
    const sides = [lengthUm, widthUm, thicknessUm].map((um) => `${um / 1_000} mm`).join(' × ');
    return {
      output: { weightG },
      working: [
        `The piece is ${sides}.`,
        `At ${densityGPerCm3} g in each cubic centimetre that is ${weightG} g to the gram.`,
      ],
    };
  },
};

const absorptionInput = keys({ absorptionPercent: decimalText(100) });

/** The class of a fired body by the water it takes up. */
export const absorptionClass: Working<z.infer<typeof absorptionInput>, Absorption> = {
  name: 'absorption-class',
  title: 'How much water a fired body takes up',
  formula:
    'Up to 0.5 percent impervious, up to 3 vitreous, up to 7 semi-vitreous, above that ' +
    'non-vitreous.',
  source: 'ANSI A137.1; the warning above 3 percent is common practice',
  caution:
    'Low absorption helps against frost but does not settle it: only a test by ASTM C1026 does.',
  example: { absorptionPercent: '3.2' },
  input: absorptionInput,
  workOut: ({ absorptionPercent }) => {
    const output = workedValue(absorptionOf(absorptionPercent));
    return {
      output,
      working: [`${absorptionPercent}% of the dry weight is ${output.class}.`],
    };
  },
};

const sparePercentMust = 'must be a decimal in quotes from 0 to less than 100, such as "15"';
const slipDensityMust = 'must be a decimal in quotes above 1 and at most 2.5, such as "1.75"';
const castsMust = 'must be how many are cast, from 1 to 10000';
const pour = { holdsMl: 1, casts: 1, sparePercent: '0', densityGPerMl: '2' };

const slipInput = keys({
  lengthMm,
  widthMm: lengthMm,
  depthMm: lengthMm,
  shrinkagePercent,
  filledPercent: decimalText(100).refine((percent) => Number(percent) > 0, 'must be more than "0"'),
  casts: z.int(castsMust).min(1, castsMust).max(10_000, castsMust),
  sparePercent: z
    .string(sparePercentMust)
    .refine((sparePercent) => slipToMix({ ...pour, sparePercent }).ok, sparePercentMust),
  densityGPerMl: z
    .string(slipDensityMust)
    .refine((densityGPerMl) => slipToMix({ ...pour, densityGPerMl }).ok, slipDensityMust),
});

/** How much slip to mix for a piece that is cast. */
export const slipVolume: Working<
  z.infer<typeof slipInput>,
  { mouldHoldsMl: number; ml: number; g: number }
> = {
  name: 'slip-volume',
  title: 'Slip for a mould',
  formula: 'The wet sides multiplied, × how much of that box the piece fills, × casts, and spare.',
  source: 'ASTM C326 for the wet sides; volume times density, common practice',
  caution: 'Fill the mould with water and weigh that: a gram is a millilitre, and it is surer.',
  example: {
    ...{ lengthMm: 150, widthMm: 150, depthMm: 20, shrinkagePercent: '12' },
    ...{ filledPercent: '100', casts: 6, sparePercent: '15', densityGPerMl: '1.75' },
  },
  input: slipInput,
  workOut: (input) => {
    const { lengthMm: lengthUm, widthMm: widthUm, depthMm: depthUm } = input;
    const holdsMl = workedValue(mouldHoldsMl({ ...input, lengthUm, widthUm, depthUm }));
    const { ml, g } = workedValue(slipToMix({ ...input, holdsMl }));
    return {
      output: { mouldHoldsMl: holdsMl, ml, g },
      working: [
        `A mould for it holds ${holdsMl} ml, as large as the wet piece.`,
        `${input.casts} times that, and ${input.sparePercent}% to spare, is ${ml} ml.`,
        `At ${input.densityGPerMl} g in each of them that is ${g} g.`,
      ],
    };
  },
};
