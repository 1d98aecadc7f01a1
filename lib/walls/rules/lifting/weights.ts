/**
 * Above so many grams a weight wants two people, three or a lift, a lift table or hired hands: 50,
 * 100 and 150 lb, rounded.
 *
 * @source common practice
 */
export const handsFromG = { two: 22_680, three: 45_359, lift: 68_039 } as const;
