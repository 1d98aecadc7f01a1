import { formatWeight, type WeightSystem } from '@/lib/units/rules';
import { handsFromG } from '@/lib/walls/rules/lifting/weights';

/** What a piece weighs: by the scale, or reckoned from its size. */
export type WeightTold = { readonly weightG: number; readonly isByScale: boolean };

/**
 * How many people a piece of this weight takes, and whether fewer go along; null where one is
 * enough.
 *
 * @source common practice: two people over 50 lb, three people or a lift over 100 lb
 * @example enoughHands({ weightG: 54_000, isByScale: true }, 2, 'lb')
 *   // 'It weighs 119 lb: three people or a lift, and 2 go along.'
 */
export function enoughHands(
  weight: WeightTold | null,
  people: number | null,
  system: WeightSystem,
): string | null {
  if (!weight || weight.weightG <= handsFromG.two) return null;
  const isVeryHeavy = weight.weightG > handsFromG.three;
  const told = formatWeight(weight.weightG, system);
  const weighs = weight.isByScale ? `It weighs ${told}` : `It is reckoned to weigh about ${told}`;
  const hands = isVeryHeavy ? 'three people or a lift' : 'two people';
  const tooFew = people !== null && people < (isVeryHeavy ? 3 : 2);
  if (!tooFew) return `${weighs}: ${hands}.`;
  return `${weighs}: ${hands}, and ${people === 1 ? 'one goes' : `${people} go`} along.`;
}
