import type { StudWood } from '../fixings/screws';

/** What a wall is made of. */
export const wallKinds = [
  ...(['wood_studs', 'steel_studs', 'brick', 'block', 'concrete'] as const),
  ...(['plaster_on_lath', 'gypsum_board'] as const),
] as const;

/** One of the {@link wallKinds}; gypsum board means the board alone, with nothing known behind it. */
export type WallKind = (typeof wallKinds)[number];

/** What can be on a wall, or in it. */
export const obstacleKinds = [
  ...(['door', 'window', 'outlet', 'switch', 'wire', 'pipe'] as const),
  ...(['moulding', 'lamp', 'furniture', 'vent', 'other'] as const),
] as const;

/** One of the {@link obstacleKinds}. */
export type ObstacleKind = (typeof obstacleKinds)[number];

/** Each of them in words. */
export const obstacleWords: Readonly<Record<ObstacleKind, string>> = {
  door: 'a door',
  window: 'a window',
  outlet: 'an outlet',
  switch: 'a switch',
  wire: 'a wire in the wall',
  pipe: 'a pipe in the wall',
  moulding: 'a moulding',
  lamp: 'a lamp',
  furniture: 'furniture',
  vent: 'a vent',
  other: 'something else',
};

/** Something on a wall or in it: from its left end and from the floor, in whole micrometres. */
export type Obstacle = {
  readonly kind: ObstacleKind;
  /** What it is, where its kind does not say it. */
  readonly words: string;
  readonly leftUm: number;
  readonly bottomUm: number;
  readonly widthUm: number;
  readonly heightUm: number;
};

/** A wall as it was looked at; null is "not known yet". Whole micrometres. */
export type WallFacts = {
  readonly wall: WallKind | null;
  readonly studWood: StudWood | null;
  readonly studSpacingUm: number | null;
  /** From the left end of the wall to the middle of the first stud. */
  readonly firstStudUm: number | null;
  readonly studDepthUm: number | null;
  readonly steelGauge: number | null;
  /** Board, plaster or panelling before what holds. */
  readonly coverUm: number | null;
  readonly isPlasterSound: boolean | null;
  /** Wood that was built in to hold the piece. */
  readonly hasBacking: boolean | null;
  readonly wallWidthUm: number | null;
  readonly ceilingUm: number | null;
  readonly furnitureUm: number | null;
  readonly servicesSought: boolean | null;
  readonly isOutdoors: boolean | null;
  readonly isOverPeople: boolean | null;
  readonly quakes: boolean | null;
  readonly obstacles: readonly Obstacle[];
};

/**
 * What an obstacle is called in a sentence.
 *
 * @example words 'thermostat' // 'thermostat'; an outlet without words // 'an outlet'
 */
export function obstacleNamed({ kind, words }: Pick<Obstacle, 'kind' | 'words'>): string {
  return words.trim() === '' ? obstacleWords[kind] : words.trim();
}
