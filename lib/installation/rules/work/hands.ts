import { handsFromG } from '@/lib/walls/rules/lifting/weights';

/**
 * How many hands a weight takes at least, in a short sentence; for how it is lifted to its height the
 * plan of how it hangs may ask for more.
 *
 * @source common practice: two over 50 lb, three over 100 lb, a lift table or hired hands over 150 lb
 */
export function handsWords(weightG: number | null): string {
  if (weightG === null) return 'Nobody knows what it weighs: at least two people.';
  if (weightG > handsFromG.lift) return 'A lift table, or hired hands with one.';
  if (weightG > handsFromG.three) return 'At least three people, or a lift.';
  return weightG > handsFromG.two ? 'At least two people.' : 'One person can.';
}
