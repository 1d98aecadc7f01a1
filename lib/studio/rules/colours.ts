/**
 * The colour areas of a sketch that have no approved tile yet. A tile is for an area by its name,
 * so that it holds for a later sketch too.
 *
 * @param areas the names in the approved sketch; empty for a sketch without areas
 * @param approved the names that each approved tile is for
 * @returns in the sketch's order; a sketch without areas asks for one approved tile of any kind
 * @example areasWithoutYes(['Sky', 'Water'], [['sky']]) // ['Water']
 */
export function areasWithoutYes(
  areas: readonly string[],
  approved: readonly (readonly string[])[],
): string[] {
  const there = new Set(approved.flat().map((name) => name.toLowerCase()));
  return areas.filter((name) => !there.has(name.toLowerCase()));
}

/** Whether the colours have their yes: at least one approved tile, and one for every area. */
export function coloursHaveYes(
  areas: readonly string[],
  approved: readonly (readonly string[])[],
): boolean {
  return approved.length > 0 && areasWithoutYes(areas, approved).length === 0;
}
