import { parseDecimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** How much water a fired body takes up, in the four classes of tile. */
export type AbsorptionClass = 'impervious' | 'vitreous' | 'semi-vitreous' | 'non-vitreous';

/** A class of absorption, and what it means for a piece that is out in the frost. */
export type Absorption = { readonly class: AbsorptionClass; readonly frostWarning: string | null };

/** Why a class of absorption was not told. */
export type AbsorptionRefusal = { code: 'absorption_out_of_range'; percent: string };

/**
 * The class of a fired body by the water it takes up, and the warning for outdoors.
 *
 * @param absorptionPercent decimal string from '0' to '100', in percent of the dry weight
 * @returns refuses what is not a decimal from 0 to 100
 * @source classes: ANSI A137.1; the warning above 3 percent is a rule of thumb, common practice
 * @example absorptionOf('3.0') // vitreous; '3.01' is semi-vitreous
 */
export function absorptionOf(absorptionPercent: string): Result<Absorption, AbsorptionRefusal> {
  const refused = refuse({ code: 'absorption_out_of_range' as const, percent: absorptionPercent });
  const percent = parseDecimal(absorptionPercent);
  if (!percent || percent.units < 0n) return refused;
  const { units } = percent;
  const one = 10n ** BigInt(percent.scale);
  if (units > 100n * one) return refused;

  if (units * 2n <= one) return ok({ class: 'impervious', frostWarning: null });
  if (units <= 3n * one) return ok({ class: 'vitreous', frostWarning: null });
  if (units <= 7n * one) return ok({ class: 'semi-vitreous', frostWarning: frostDoubt });
  return ok({ class: 'non-vitreous', frostWarning: frostDanger });
}

const frostDoubt =
  'Above 3 percent it may not stand frost: have it tested before it hangs outdoors.';
const frostDanger =
  'Above 7 percent it is likely to burst in frost: keep it where it never freezes wet.';
