import 'server-only';
import { darkToLight } from '@/lib/colour/rules/words';
import type { ShownWhole } from './shown';

/** A colour area of the sketch, its tiles from dark to light, and whether one has its yes. */
export type AreaTold = { name: string; tiles: readonly ShownWhole[]; isApproved: boolean };

/**
 * The colour areas of the last sketch that was approved, or else shown, each with its tiles from
 * dark to light.
 */
export function areasOf(shown: readonly ShownWhole[]): AreaTold[] {
  const sketches = shown.filter((each) => each.what === 'sketch');
  const sketch = sketches.findLast((each) => each.yes !== null) ?? sketches.at(-1);
  const tiles = shown.filter((each) => each.what === 'colour_tile');
  return (sketch?.sketch.areas ?? []).map(({ name }) => {
    const of = tiles.filter(({ tile }) => tile.areas.some((area) => isSame(area, name)));
    return {
      name,
      tiles: darkToLight(of, middleOf),
      isApproved: of.some((tile) => tile.yes !== null),
    };
  });
}

function isSame(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase();
}

function middleOf({ tile }: ShownWhole): number | null {
  return tile?.shades.find(({ shade }) => shade === 'middle')?.lab?.[0] ?? null;
}
