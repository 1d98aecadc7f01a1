import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { kilnParts } from '@/lib/studio/rules/kilns/keeping';
import { coneNamed, type Cone } from '@/lib/studio/rules/kilns/cones';
import { celsiusOf } from '@/lib/studio/rules/kilns/degrees';
import { lengthInputIn } from '@/lib/units/input';

/** A scale that a form was drawn in. */
export const scaleInput = z.enum(['F', 'C']);
const unitInput = z.enum(['in', 'mm']);

/** A whole number typed into a form. */
export function countInput(least: number, most: number, what: string) {
  return z
    .string()
    .trim()
    .regex(/^\d{1,7}$/, what)
    .transform(Number)
    .refine((count) => count >= least && count <= most, { message: what });
}

const cones = z.string().transform((typed, context) => {
  const named: Cone[] = [];
  for (const word of typed.split(/[\s,;]+/).filter((each) => each !== '')) {
    const cone = coneNamed(word);
    if (!cone) {
      context.addIssue({
        code: 'custom',
        message: `There is no cone ${word}. Write such as 04, 6.`,
      });
      return z.NEVER;
    }
    named.push(cone);
  }
  if (named.length > 0) return [...new Set(named)];
  context.addIssue({ code: 'custom', message: 'Write the cones it is fired to, such as 04, 6.' });
  return z.NEVER;
});

const rateWords = 'Write what a kWh costs in cents, such as 15.25.';

/** At most 9,999.999 cents, with three places after the point, as the column holds them. */
function isRate(text: string): boolean {
  const rate = parseDecimal(text);
  if (!rate || rate.units < 0n || rate.scale > 3) return false;
  return rate.units <= 9_999n * 10n ** BigInt(rate.scale);
}

const measures = z.strictObject({
  insideHeight: z.string(),
  shelfWidth: z.string(),
  shelfDepth: z.string(),
  shelfThick: z.string(),
});

/** A kiln as its form sends it; lengths in `lengthUnit` unless they say otherwise. */
export const keepKilnInput = z
  .strictObject({
    requestKey: z.uuid(),
    kilnId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
    lengthUnit: unitInput,
    degrees: scaleInput,
    ...measures.shape,
    name: z.string().trim().min(2, 'Write what the kiln is called.').max(60, 'Say it shorter.'),
    shelves: countInput(1, 40, 'Write how many shelves there are, from 1 to 40.'),
    powerW: countInput(1, 500_000, 'Write its power in whole watts: volts times amperes.'),
    centsPerKwh: z.string().trim().refine(isRate, rateWords),
    wearCents: centsInput,
    cones,
    turnsAWeek: countInput(1, 14, 'Write how many turns it takes in a week, from 1 to 14.'),
    leastFillPercent: countInput(0, 100, 'Write a percentage from 0 to 100.'),
    longestWaitDays: countInput(1, 200, 'Write a number of days, from 1 to 200.'),
    openBelow: countInput(1, 600, 'Write the temperature below which it is opened.'),
    elementFirings: countInput(1, 5_000, 'Write a number of firings, such as 150.'),
    note: z.string().trim().max(500, 'Say it in fewer words.').default(''),
  })
  .transform((typed, context) => {
    const {
      lengthUnit,
      degrees,
      openBelow,
      insideHeight,
      shelfWidth,
      shelfDepth,
      shelfThick,
      ...kiln
    } = typed;
    const sides = { insideHeight, shelfWidth, shelfDepth, shelfThick };
    const read = lengthsOf(sides, lengthUnit, context);
    const openBelowC = degrees === 'F' ? celsiusOf(openBelow) : openBelow;
    if (openBelowC < 20 || openBelowC > 300) {
      const message = 'A kiln is opened below 68 to 572 °F, which is 20 to 300 °C.';
      context.addIssue({ code: 'custom', path: ['openBelow'], message });
    }
    return { ...kiln, ...read, openBelowC };
  });
/** What {@link keepKilnInput} reads. */
export type KeepKilnInput = z.output<typeof keepKilnInput>;

function lengthsOf(
  typed: z.output<typeof measures>,
  unit: 'in' | 'mm',
  context: z.RefinementCtx,
): Record<'insideHeightUm' | 'shelfWidthUm' | 'shelfDepthUm' | 'shelfThickUm', number> {
  const length = lengthInputIn(unit);
  const read = (name: keyof z.output<typeof measures>): number => {
    const um = length.safeParse(typed[name]);
    if (um.success) return um.data;
    const message = um.error.issues[0]?.message ?? '';
    context.addIssue({ code: 'custom', path: [name], message });
    return 0;
  };
  return {
    insideHeightUm: read('insideHeight'),
    shelfWidthUm: read('shelfWidth'),
    shelfDepthUm: read('shelfDepth'),
    shelfThickUm: read('shelfThick'),
  };
}

/** What was changed or mended in a kiln. */
export const noteCareInput = z.strictObject({
  requestKey: z.uuid(),
  kilnId: z.uuid(),
  part: z.enum(kilnParts, { message: 'Choose what was changed.' }),
  on: dayInput,
  note: z.string().trim().max(300, 'Say it in fewer words.').default(''),
});
/** What {@link noteCareInput} reads. */
export type NoteCareInput = z.output<typeof noteCareInput>;

/** Days on which a kiln stands still. */
export const closeKilnInput = z.strictObject({
  requestKey: z.uuid(),
  kilnId: z.uuid(),
  fromOn: dayInput,
  toOn: dayInput,
  why: z.string().trim().max(200, 'Say it in fewer words.').default(''),
});
/** What {@link closeKilnInput} reads. */
export type CloseKilnInput = z.output<typeof closeKilnInput>;

/** Days that a kiln does not stand still after all. */
export const reopenKilnInput = z.strictObject({ requestKey: z.uuid(), closedId: z.uuid() });
/** What {@link reopenKilnInput} reads. */
export type ReopenKilnInput = z.output<typeof reopenKilnInput>;

/** A kiln that is no longer used, or is used again. */
export const retireKilnInput = z.strictObject({
  requestKey: z.uuid(),
  kilnId: z.uuid(),
  isRetired: z.enum(['yes', 'no']).transform((word) => word === 'yes'),
});
/** What {@link retireKilnInput} reads. */
export type RetireKilnInput = z.output<typeof retireKilnInput>;
