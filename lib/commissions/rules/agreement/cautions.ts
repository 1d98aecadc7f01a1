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
 * @source 16 CFR Part 429 for sales made at homes; limits on deposits for work set into a house:
 *   common practice, a lawyer decides
 * @example a piece that is hung, signed at the gallery, without hanging: nothing
 */
export function signingCautions(where: SignedWhere, said: ToMind): string[] {
  return [...placeCautions(where), ...buildingCautions(said)];
}

function placeCautions(where: SignedWhere): string[] {
  if (where === 'at_their_home') {
    return [
      'Signed at their home, it can be cancelled for three business days: hand over both papers of the right to cancel, and cut no clay before. Ask a lawyer.',
    ];
  }
  if (where === 'elsewhere') {
    return [
      'What is signed in a room rented for a short time, as at a fair, can carry the same right to cancel as at a home. Ask a lawyer before clay is cut.',
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
