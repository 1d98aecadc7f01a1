import { z } from 'zod';
import { billableWeight, publishedTerms, type SizeTerms } from '@/lib/freight/rules/billable';
import { densityScaleOn, freightClass, type FreightClass } from '@/lib/freight/rules/density';
import { parseDay, type Day } from '@/lib/dates/rules';
import { keys, lengthMm } from '@/lib/workings/atoms';
import { workedValue, type Working } from '@/lib/workings/working';

const weightMust = 'must be whole grams, from 1 to 100000000';
const weightG = z.int(weightMust).min(1, weightMust).max(100_000_000, weightMust);
const divisorMust = 'must be whole cubic inches that count as a pound, from 1 to 10000';
const overMust = 'must be whole cubic inches above which size counts, from 0 to 1000000';
const sidesMust = 'must be "as_measured", "nearest" or "up"';

const billableInput = keys({
  ...{ lengthMm, widthMm: lengthMm, heightMm: lengthMm, weightG },
  divisorIn3PerLb: z.int(divisorMust).min(1, divisorMust).max(10_000, divisorMust),
  sides: z.enum(['as_measured', 'nearest', 'up'], sidesMust).optional(),
  overIn3: z.int(overMust).min(0, overMust).max(1_000_000, overMust).optional(),
});

/** What is not said is as published for the divisor; for others each side is rounded up. */
function termsOf(input: z.infer<typeof billableInput>): SizeTerms & { divisorIn3: number } {
  const { divisorIn3PerLb: divisorIn3, sides, overIn3 } = input;
  const published = publishedTerms.find((terms) => terms.divisorIn3 === divisorIn3);
  return {
    divisorIn3,
    sides: sides ?? published?.sides ?? 'up',
    overIn3: overIn3 ?? published?.overIn3 ?? 0,
  };
}

const sidesWords: Readonly<Record<SizeTerms['sides'], string>> = {
  as_measured: 'as they are',
  nearest: 'rounded to the nearest inch',
  up: 'rounded up to whole inches',
};

/** What a carrier charges a box as: its weight or its size. */
export const billableWeightWorking: Working<
  z.infer<typeof billableInput>,
  { billableLb: number }
> = {
  name: 'billable-weight',
  title: 'What a box is charged as',
  formula:
    'Length × width × height in inches ÷ the carrier’s divisor, up to a whole pound; or the scale, ' +
    'up to a whole pound, whichever is more.',
  source:
    'Terms of parcel carriers, divisor 139, sides rounded up since 18 Aug 2025; USPS Domestic Mail ' +
    'Manual 283 and 604.7, divisor 166, to the nearest inch and only above 1,728 in³',
  caution:
    'Carriers change their terms: read the current ones. Handling of what is long, heavy or in wood ' +
    'is charged on top.',
  example: { lengthMm: 900, widthMm: 600, heightMm: 200, weightG: 9_000, divisorIn3PerLb: 139 },
  input: billableInput,
  workOut: (input) => {
    const { lengthMm: lengthUm, widthMm: widthUm, heightMm: heightUm, weightG: grams } = input;
    const terms = termsOf(input);
    const worked = workedValue(
      billableWeight({ lengthUm, widthUm, heightUm, weightG: grams }, terms),
    );
    const { billableLb, byScaleLb, bySizeLb, sidesIn, volumeIn3 } = worked;
    const bySize =
      bySizeLb === null
        ? `That is not above ${terms.overIn3} in³, so its size does not count.`
        : `${volumeIn3} ÷ ${terms.divisorIn3}, up to a whole pound, is ${bySizeLb} lb.`;
    return {
      output: { billableLb },
      working: [
        `The sides, ${sidesWords[terms.sides]}, are ${sidesIn.join(' × ')} in: ${volumeIn3} in³.`,
        bySize,
        `On the scale it is ${grams} g, ${byScaleLb} lb up to a whole pound.`,
        `It is charged as ${billableLb} lb.`,
      ],
    };
  },
};

const dayMust = 'must be a day in quotes, such as "2026-11-25"';

const classInput = keys({
  ...{ lengthMm, widthMm: lengthMm, heightMm: lengthMm, weightG },
  on: z
    .string(dayMust)
    .transform((text, context): Day => {
      const read = parseDay(text);
      if (read.ok) return read.value;
      context.addIssue({ code: 'custom', message: dayMust });
      return z.NEVER;
    })
    .optional(),
});

/** The scale that is taken where no day is said: the newest one. */
const newestOn: Day = '2199-12-31';

/** The class of a load by how dense it is. */
export const freightClassWorking: Working<z.infer<typeof classInput>, FreightClass> = {
  name: 'freight-class',
  title: 'The freight class of a load',
  formula: 'Pounds ÷ (length × width × height in inches ÷ 1,728), read from the scale of the day.',
  source: 'NMFTA, standard density scale of 13 steps from 19 Jul 2025, and of 11 before it',
  caution:
    'By density only: some goods have a class of their own. Ask the carrier, and measure with the ' +
    'pallet under it.',
  example: { lengthMm: 1_200, widthMm: 1_000, heightMm: 900, weightG: 160_000 },
  input: classInput,
  workOut: (input) => {
    const { lengthMm: lengthUm, widthMm: widthUm, heightMm: heightUm } = input;
    const on = input.on ?? newestOn;
    const load = [{ lengthUm, widthUm, heightUm, weightG: input.weightG }];
    const output = workedValue(freightClass(load, on));
    const feet = (lengthUm / 304_800) * (widthUm / 304_800) * (heightUm / 304_800);
    const pounds = Math.round((input.weightG / 453.592_37) * 100) / 100;
    const { holdsFromOn, steps } = densityScaleOn(on);
    const scale = holdsFromOn === null ? 'of before 2025-07-19' : `that holds from ${holdsFromOn}`;
    return {
      output,
      working: [
        `The load is ${pounds} lb in ${Math.round(feet * 100) / 100} cubic feet.`,
        `That is ${output.densityLbPerFt3} lb to the cubic foot.`,
        `On the scale of ${steps.length} steps ${scale} it is class ${output.class}.`,
      ],
    };
  },
};
