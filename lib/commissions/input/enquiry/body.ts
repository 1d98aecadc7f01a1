import { z } from 'zod';
import { known, lines, saidLine } from '@/lib/commissions/input/atoms';
import { formatDecimal, parseDecimal } from '@/lib/money/rules/decimal';
import { knownYesNo } from './answers';

const nameLengthMost = 80;

/**
 * A measure from the maker's sheet or a test, kept as exact decimal text.
 *
 * @param least the smallest that is believed
 */
function measured(most: number, fault: string, least = 0) {
  return z.string().refine((text) => isWithin(text, least, most), fault);
}

function isWithin(text: string, least: number, most: number): boolean {
  const decimal = parseDecimal(text);
  if (!decimal || decimal.scale > 2) return false;
  const value = Number(text);
  return value >= least && value <= most;
}

const perKgMost = 1_000;

/** What a kilogram costs as it is typed, `1.25` or `$1.254`; decimal cents out. */
const perKg = z.string().transform((text, context) => {
  const amount = parseDecimal(text.replace(/^\$\s*/, ''));
  const isSome = amount !== null && amount.units > 0n && amount.scale <= 5;
  if (!isSome || amount.units > BigInt(perKgMost) * 10n ** BigInt(amount.scale)) {
    const message = 'Write what a kilogram costs in dollars, such as 1.25, at most 1,000.';
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  }
  return formatDecimal({ units: amount.units * 100n, scale: amount.scale });
});

/** The form that writes a clay body down, or changes the one whose id it carries. */
export const keepBodyInput = z.strictObject({
  requestKey: z.uuid(),
  bodyId: known(z.uuid({ error: 'Choose the clay body once more.' })),
  name: saidLine('Give the clay body the name on its bag.', nameLengthMost),
  absorptionPercent: known(
    measured(40, 'A fired body takes up 0 to 40 percent of water: write it as 2 or 2.5.'),
  ),
  shrinkagePercent: known(measured(40, 'Clay shrinks by 0 to 40 percent: write it as 12 or 12.5.')),
  densityGPerCm3: known(
    measured(5, 'Fired clay weighs 0.5 to 5 grams in each cubic centimetre: write it as 2.2.', 0.5),
  ),
  frostTested: knownYesNo,
  /** Decimal cents; typed in dollars. */
  centsPerKg: known(perKg),
  note: lines,
});

/** What writing down a clay body takes. */
export type KeepBodyInput = z.output<typeof keepBodyInput>;
