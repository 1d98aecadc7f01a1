/** Chance that is the same each time: a small well-known generator (mulberry32) from one number. */
export type Chance = {
  /** From 0 up to, not including, 1. */
  next(): number;
  /** A whole number from low to high, both included. */
  whole(low: number, high: number): number;
  pick<Thing>(things: readonly Thing[]): Thing;
  /** By weight; a weight of 0 is never picked. */
  weighted<Thing>(things: readonly Thing[], weightOf: (thing: Thing) => number): Thing;
  happens(share: number): boolean;
};

/** @throws Error when asked to pick from nothing */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  const weighted = <Thing>(things: readonly Thing[], weightOf: (thing: Thing) => number): Thing => {
    let left = next() * things.reduce((sum, thing) => sum + weightOf(thing), 0);
    for (const thing of things) {
      left -= weightOf(thing);
      if (left < 0) return thing;
    }
    const last = things.at(-1);
    if (last === undefined) throw new Error('There is nothing to pick from.');
    return last;
  };
  return {
    next,
    whole,
    weighted,
    pick: (things) => weighted(things, () => 1),
    happens: (share) => next() < share,
  };
}
