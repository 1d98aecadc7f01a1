import { z } from 'zod';
import { known } from '@/lib/commissions/input/atoms';
import { percentInput } from '@/lib/money/input';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { knownYesNo } from './answers';

const lettersMost = 80;

/** Who brought them, as the form says it; without `asksReferral` it stays as it was. */
export const referralFields = {
  asksReferral: known(z.literal('yes')),
  /** A few letters of the name, mail or telephone. */
  broughtLetters: known(z.string().max(lettersMost, `Keep it to ${lettersMost} letters.`)),
  /** The one who was shown there before; counts while the letters still say that name. */
  broughtById: known(z.uuid()),
  broughtPercent: known(
    percentInput.refine((text) => (parseDecimal(text)?.scale ?? 0) <= 2, {
      message: 'Write the share with at most two decimals, such as 7.5.',
    }),
  ),
  broughtKnown: knownYesNo,
};

/** Who brought them, as the form says it. */
export type ReferralSaid = {
  asksReferral: 'yes' | null;
  broughtLetters: string | null;
  broughtById: string | null;
  broughtPercent: string | null;
  broughtKnown: boolean | null;
};

/** A fee needs somebody who gets it. */
export function checkReferral(form: ReferralSaid, context: z.core.$RefinementCtx): void {
  if (form.broughtLetters !== null || Number(form.broughtPercent ?? 0) === 0) return;
  const message = 'Write who brought them, or 0 for nobody.';
  context.addIssue({ code: 'custom', path: ['broughtLetters'], message });
}
