/** A screw by its size. */
export type ScrewName = 'no_8' | 'no_10' | 'no_12' | 'no_14' | 'lag_1_4' | 'lag_5_16' | 'lag_3_8';

/** The screws in the order in which a form offers them. */
export const screwNames: readonly ScrewName[] = [
  ...(['no_8', 'no_10', 'no_12', 'no_14'] as const),
  ...(['lag_1_4', 'lag_5_16', 'lag_3_8'] as const),
];

/** The two kinds of screw that wood is reckoned with. */
export type ScrewKind = 'wood screw' | 'lag screw';

/** A screw in inches and pounds to the square inch, the units of the wood tables. */
export type Screw = {
  readonly words: string;
  readonly kind: ScrewKind;
  readonly diameterIn: number;
  /** The diameter at the root of the thread, which the bending is reckoned with. */
  readonly rootIn: number;
  readonly headIn: number;
  /** The bending yield strength. */
  readonly yieldPsi: number;
};

function woodScrew(number: number, sides: [number, number, number], yieldPsi: number): Screw {
  const [diameterIn, rootIn, headIn] = sides;
  const words = `No. ${number} wood screw`;
  return { words, kind: 'wood screw', diameterIn, rootIn, headIn, yieldPsi };
}

function lagScrew(size: string, sides: [number, number, number], yieldPsi: number): Screw {
  const [diameterIn, rootIn, headIn] = sides;
  return { words: `${size} in lag screw`, kind: 'lag screw', diameterIn, rootIn, headIn, yieldPsi };
}

/**
 * The screws a cleat is fixed with: diameter, root, head.
 *
 * @source AWC NDS 2018, appendices I and L, for diameters, roots and yield strengths; heads from
 *   memory
 */
export const screws: Readonly<Record<ScrewName, Screw>> = {
  no_8: woodScrew(8, [0.164, 0.131, 0.312], 90_000),
  no_10: woodScrew(10, [0.19, 0.152, 0.363], 80_000),
  no_12: woodScrew(12, [0.216, 0.171, 0.414], 80_000),
  no_14: woodScrew(14, [0.242, 0.196, 0.48], 70_000),
  lag_1_4: lagScrew('1/4', [0.25, 0.173, 0.4375], 70_000),
  lag_5_16: lagScrew('5/16', [0.3125, 0.227, 0.5], 60_000),
  lag_3_8: lagScrew('3/8', [0.375, 0.265, 0.5625], 45_000),
};

/** What the framing of a house is sawn from. */
export type StudWood = 'spruce_pine_fir' | 'hem_fir' | 'douglas_fir_larch' | 'southern_pine';

/** The studWoods in the order in which a form offers them. */
export const studWoods: readonly StudWood[] = [
  'spruce_pine_fir',
  'hem_fir',
  'douglas_fir_larch',
  'southern_pine',
];

/** The studWoods in words. */
export const studWoodWords: Readonly<Record<StudWood, string>> = {
  spruce_pine_fir: 'spruce, pine or fir',
  hem_fir: 'hemlock or fir',
  douglas_fir_larch: 'Douglas fir or larch',
  southern_pine: 'southern pine',
};

const gravities: Readonly<Record<StudWood, number>> = {
  spruce_pine_fir: 0.42,
  hem_fir: 0.43,
  douglas_fir_larch: 0.5,
  southern_pine: 0.55,
};

/** The specific gravity that a cleat of wood or plywood is reckoned with. */
export const cleatGravity = 0.42;
const softestGravity = 0.36;

/**
 * The specific gravity a stud is reckoned with; nothing known counts as the softest framing.
 *
 * @source AWC NDS 2018, table 12.3.3A; the softest is its western softwoods
 * @example gravityOf(null) // 0.36
 */
export function gravityOf(wood: StudWood | null): number {
  return wood === null ? softestGravity : gravities[wood];
}

/**
 * How much of a screw is thread, in inches of its length.
 *
 * @source wood screws two thirds of their length, lag screws half of it and half an inch: AWC NDS
 *   2018, appendix L, from memory; the box of the screw says it better
 */
export function threadIn({ kind }: Screw, lengthIn: number): number {
  return kind === 'wood screw' ? (lengthIn * 2) / 3 : lengthIn / 2 + 0.5;
}
