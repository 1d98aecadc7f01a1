/** Chance that repeats: the same seed always draws the same piece. */
export type Chance = Readonly<{
  /** A number from `from` up to `to`. */
  between: (from: number, to: number) => number;
  /** A number about zero, rarely far from it; `spread` is one standard step. */
  about: (spread: number) => number;
}>;

/** Makes a repeatable chance from a whole number or a word. */
export function chanceOf(seed: number | string): Chance {
  let state = typeof seed === 'number' ? seed >>> 0 : wordSeed(seed);
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    between: (from, to) => from + (to - from) * next(),
    about: (spread) => (next() + next() + next() - 1.5) * 2 * spread,
  };
}

function wordSeed(word: string): number {
  let hash = 2166136261;
  for (const letter of word) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 16777619);
  return hash >>> 0;
}
