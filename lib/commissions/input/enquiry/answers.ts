import { z } from 'zod';
import { known } from '@/lib/commissions/input/atoms';

/**
 * Yes, no, or nothing for what is not known yet: three choices.
 *
 * @example knownYesNo.parse('') // null; 'yes' // true; 'perhaps' is refused
 */
export const knownYesNo = known(
  z
    .enum(['yes', 'no'], { error: 'Choose yes, no, or not known yet.' })
    .transform((answer) => answer === 'yes'),
);
