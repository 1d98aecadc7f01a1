import { handsFromG } from '@/lib/walls/rules/lifting/weights';

/** Who carries a box of a weight, in common practice. */
export type Hands = 'one_person' | 'two_people' | 'three_or_lift' | 'freight';

/**
 * Who carries a box: over 50 lb two people, over 100 lb three or a lift, over 150 lb a pallet and a
 * lift-gate.
 *
 * @source common practice
 */
export function handsFor(weightG: number): Hands {
  if (weightG > handsFromG.lift) return 'freight';
  if (weightG > handsFromG.three) return 'three_or_lift';
  return weightG > handsFromG.two ? 'two_people' : 'one_person';
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
