import { deltaE00, type Lab } from '@/lib/colour/rules';

/** A difference as one would tell it, and its number. */
export type ColourDifference = { readonly deltaE: number; readonly words: string };

/**
 * The difference of a fired colour to its tile, in number and in words.
 *
 * @param tile what was approved
 * @param fired what came out of the kiln
 * @source the number is CIEDE2000; the words for its size are common practice
 * @example from [60, 0, 0] to [64, -6, 0]: 'clearly different: lighter, greener'
 */
export function colourDifference(tile: Lab, fired: Lab): ColourDifference {
  const deltaE = deltaE00(tile, fired);
  const ways = waysOf(tile, fired);
  const size = sizeOf(deltaE);
  return {
    deltaE,
    words: ways.length === 0 || deltaE < 0.5 ? size : `${size}: ${ways.join(', ')}`,
  };
}

function sizeOf(deltaE: number): string {
  if (deltaE < 0.5) return 'no difference to be seen';
  if (deltaE < 1.5) return 'just to be seen side by side';
  if (deltaE < 3) return 'a little different';
  return deltaE < 6 ? 'clearly different' : 'another colour';
}

/** From here on a step along one axis is worth a word. */
const stepLeast = 0.8;

function waysOf([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): string[] {
  const steps = [
    { by: l2 - l1, up: 'lighter', down: 'darker' },
    { by: a2 - a1, up: 'redder', down: 'greener' },
    { by: b2 - b1, up: 'yellower', down: 'bluer' },
  ];
  return steps
    .filter(({ by }) => Math.abs(by) >= stepLeast)
    .sort((one, other) => Math.abs(other.by) - Math.abs(one.by))
    .map(({ by, up, down }) => (by > 0 ? up : down));
}

/** The three of a range. */
export const shades = ['light', 'middle', 'dark'] as const;

/** Light, middle or dark. */
export type Shade = (typeof shades)[number];

/**
 * The nearest of the range to a fired colour.
 *
 * @returns null when none of the range was measured
 */
export function nearestShade(
  range: readonly { readonly shade: Shade; readonly lab: Lab | null }[],
  fired: Lab,
): ({ readonly shade: Shade } & ColourDifference) | null {
  const told = range.flatMap(({ shade, lab }) =>
    lab === null ? [] : [{ shade, ...colourDifference(lab, fired) }],
  );
  return told.reduce<(typeof told)[number] | null>(
    (nearest, each) => (nearest === null || each.deltaE < nearest.deltaE ? each : nearest),
    null,
  );
}

/**
 * From dark to light, as a gradation is laid out; what was not measured stands last, in its order.
 *
 * @param lightnessOf L*; null where it was not measured
 */
export function darkToLight<Tile>(
  tiles: readonly Tile[],
  lightnessOf: (tile: Tile) => number | null,
): Tile[] {
  return tiles.toSorted((one, other) => {
    const [dark, light] = [lightnessOf(one), lightnessOf(other)];
    if (dark === null || light === null) return Number(dark === null) - Number(light === null);
    return dark - light;
  });
}
