import { placeKey } from '@/lib/collectors/rules/place-key';

export { placeKey };

/** A place in the diary: its address, and how long the way from the gallery takes, one way. */
export type PlaceToGo = { readonly address: string; readonly travelMinutes: number };

/** How long the way between two places takes, by {@link wayKey}, in minutes. */
export type Ways = ReadonlyMap<string, number>;

/** Two places in the order in which the way between them is kept: by code points. */
export function inOrder(one: string, other: string): readonly [string, string] {
  const [a, b] = [placeKey(one), placeKey(other)];
  return comesFirst(a, b) ? [a, b] : [b, a];
}

/** The way between two places, whichever of them comes first. */
export function wayKey(one: string, other: string): string {
  return inOrder(one, other).join('\n');
}

/**
 * How long the way from one place to another takes, in minutes.
 *
 * Nothing where both are the same; what is kept of the two; else the way by the gallery, which is
 * never too short by the roads that are known.
 *
 * @example two places 40 and 25 minutes from the gallery, of which nothing is kept: 65
 */
export function wayMinutes(one: PlaceToGo, other: PlaceToGo, ways: Ways): number {
  if (placeKey(one.address) === placeKey(other.address)) return 0;
  return ways.get(wayKey(one.address, other.address)) ?? one.travelMinutes + other.travelMinutes;
}

function comesFirst(one: string, other: string): boolean {
  const [a, b] = [Array.from(one), Array.from(other)];
  const at = a.findIndex((letter, index) => letter !== b[index]);
  if (at === -1) return true;
  return (a[at]?.codePointAt(0) ?? 0) < (b[at]?.codePointAt(0) ?? -1);
}
