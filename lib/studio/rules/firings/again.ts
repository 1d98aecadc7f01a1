/** A load of a kiln in which pieces of one job were, at one step. */
export type LoadOfStep = {
  readonly pieces: number;
  /** How many of them are to be fired again; 0 while it is not opened. */
  readonly fireAgain: number;
};

/**
 * How many pieces at a firing step were in such a firing before and did not come out. They go into
 * the next load first.
 *
 * @param loads that were lit, in the order in which they were
 * @example 10 of which 2 are to be fired again, then a load of 1 that came out // 1
 */
export function againHere(loads: readonly LoadOfStep[]): number {
  return loads.reduce((again, load) => Math.max(0, again - load.pieces) + load.fireAgain, 0);
}

/**
 * Whether a firing is one of the planned ones: it is not where it holds nothing but pieces that did
 * not come out of an earlier one.
 *
 * @source common practice: firings that a route asks for and firings that mend are counted apart
 */
export function isPlannedFiring(lines: readonly { readonly isAgain: boolean }[]): boolean {
  return lines.length === 0 || lines.some((line) => !line.isAgain);
}
