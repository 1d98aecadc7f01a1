/** A measured colour as decimal text: L*, a*, b*, under D50. */
export type Lab3 = readonly [l: string, a: string, b: string];

/** What is said and ticked with a yes to a colour. */
export const seenInHandStatement =
  'I have the tiles of this range in my hand, looked at them by day and in the room, and take any colour between the lightest and the darkest.';

/** What is said with a yes to a sketch. */
export const sketchStatement =
  'I approve this sketch. It does not show depth, nor the fired colours.';
