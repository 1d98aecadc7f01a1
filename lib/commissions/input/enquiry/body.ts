import { z } from 'zod';
import { known, lines, saidLine } from '@/lib/commissions/input/atoms';
import { parseDecimal } from '@/lib/money/rules/decimal';
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
  note: lines,
});

/** What writing down a clay body takes. */
export type KeepBodyInput = z.output<typeof keepBodyInput>;
