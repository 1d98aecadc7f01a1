import type { Cents } from '@/lib/money/rules';
import type { SignedWhere } from './paper';
import type { CommissionTaxAs } from './tax';

/** What is to be signed, as far as it makes one careful. */
export type ToMind = {
  readonly taxAs: CommissionTaxAs;
  readonly depositCents: Cents;
  readonly priceCents: Cents;
  readonly hasHanging: boolean;
};

/**
 * What to mind where and what is signed; empty for nothing.
 *
 * @source 16 CFR Part 429 for sales made at homes and at rented places, and 429.3(b) for arts and
 *   crafts at fairs (60 FR 54187); the exception for what was talked over at a fixed place of business
 *   is in 429.0, from memory; limits on deposits for work set into a house:
 *   common practice, a lawyer decides
 * @example a piece that is hung, signed at the gallery, without hanging: nothing
 */
export function signingCautions(where: SignedWhere, said: ToMind): string[] {
  return [...placeCautions(where), ...buildingCautions(said)];
}

function placeCautions(where: SignedWhere): string[] {
  if (where === 'at_their_home') {
    return [
      'Signed at their home, it can be cancelled for three business days: hand over both papers of the right to cancel, and cut no clay before. Exceptions exist, as for what was talked over at the gallery first; a lawyer decides.',
    ];
  }
  if (where === 'elsewhere') {
    return [
      'What is signed in a room rented for a short time can carry the same right to cancel as at a home. Arts and crafts sold at fairs are excepted by the federal rule, not by every state. Ask a lawyer before clay is cut.',
    ];
  }
  return [];
}

function buildingCautions({ taxAs, depositCents, priceCents, hasHanging }: ToMind): string[] {
  if (taxAs === 'goods_hung') {
    return hasHanging
      ? ['Hanging on somebody’s wall can need insurance, and in some places a licence. Look it up.']
      : [];
  }
  const builtIn =
    'Pieces set into a house may fall under the rules for home improvement: some states limit the deposit, and the setting is a licensed contractor’s, on a paper of its own. Ask a lawyer.';
  return depositCents * 10n > priceCents
    ? [builtIn, 'The deposit is more than a tenth of the price: look the limit up first.']
    : [builtIn];
}
