const fiftyPounds = 22_680;
const hundredPounds = 45_359;
const hundredFiftyPounds = 68_039;

/**
 * How many hands a weight takes, in a short sentence.
 *
 * @source common practice: two over 50 lb, three over 100 lb, a lift table or hired hands over 150 lb
 */
export function handsWords(weightG: number | null): string {
  if (weightG === null) return 'Nobody knows what it weighs: at least two people.';
  if (weightG > hundredFiftyPounds) return 'A lift table, or hired hands with one.';
  if (weightG > hundredPounds) return 'Three people, or a lift.';
  return weightG > fiftyPounds ? 'Two people.' : 'One person can.';
}
