/** Who carries a box of a weight, in common practice. */
export type Hands = 'one_person' | 'two_people' | 'three_or_lift' | 'freight';

/** From so many grams on more hands are wanted: 50, 100 and 150 lb, rounded. */
export const handsFromG = { twoPeople: 22_680, threeOrLift: 45_359, freight: 68_039 } as const;

/**
 * Who carries a box: over 50 lb two people, over 100 lb three or a lift, over 150 lb a pallet and a
 * lift-gate.
 *
 * @source common practice
 */
export function handsFor(weightG: number): Hands {
  if (weightG > handsFromG.freight) return 'freight';
  if (weightG > handsFromG.threeOrLift) return 'three_or_lift';
  return weightG > handsFromG.twoPeople ? 'two_people' : 'one_person';
}

/** What to mind with a box of this weight; null where one person carries it. */
export const handsCautions: Readonly<Record<Hands, string | null>> = {
  one_person: null,
  two_people: 'Over 50 lb: two people carry it. The label says so.',
  three_or_lift: 'Over 100 lb: three people, or a lift. Nobody lifts it alone, at either end.',
  freight:
    'Over 150 lb: too heavy for a parcel. It goes on a pallet; ask for a lift-gate, and for an ' +
    'appointment where somebody lives.',
};

/** What a label says of hands: the words that stand on it; null for one person. */
export const handsOnLabel: Readonly<Record<Hands, string | null>> = {
  one_person: null,
  two_people: 'TWO PEOPLE',
  three_or_lift: 'THREE PEOPLE OR A LIFT',
  freight: 'LIFT ONLY',
};
