import { formatWeight, type WeightSystem } from '@/lib/units/rules';

/** What a piece weighs: by the scale, or reckoned from its size. */
export type WeightTold = { readonly weightG: number; readonly isByScale: boolean };

/** From 50 lb two people, in grams. @source common practice */
const twoPeopleG = 22_680;
/** From 100 lb three people, or a lift, in grams. @source common practice */
const threePeopleG = 45_359;

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
  if (!weight || weight.weightG <= twoPeopleG) return null;
  const isVeryHeavy = weight.weightG > threePeopleG;
  const told = formatWeight(weight.weightG, system);
  const weighs = weight.isByScale ? `It weighs ${told}` : `It is reckoned to weigh about ${told}`;
  const hands = isVeryHeavy ? 'three people or a lift' : 'two people';
  const tooFew = people !== null && people < (isVeryHeavy ? 3 : 2);
  if (!tooFew) return `${weighs}: ${hands}.`;
  return `${weighs}: ${hands}, and ${people === 1 ? 'one goes' : `${people} go`} along.`;
}
