import { chanceOf } from './pictures/chance';

/** Chance that is the same each time it is asked from the same number. */
export type TradeChance = {
  /** A whole number from low to high, both included. */
  whole(low: number, high: number): number;
  pick<Thing>(things: readonly Thing[]): Thing;
  /** By weight; a weight of 0 is never picked. */
  weighted<Thing>(things: readonly Thing[], weightOf: (thing: Thing) => number): Thing;
  happens(share: number): boolean;
};

/** @throws Error when asked to pick from nothing */
export function tradeChance(seed: number): TradeChance {
  const chance = chanceOf(seed);
  const weighted = <Thing>(things: readonly Thing[], weightOf: (thing: Thing) => number): Thing => {
    let left = chance.between(
      0,
      things.reduce((sum, thing) => sum + weightOf(thing), 0),
    );
    for (const thing of things) {
      left -= weightOf(thing);
      if (left < 0) return thing;
    }
    const last = things.at(-1);
    if (last === undefined) throw new Error('There is nothing to pick from.');
    return last;
  };
  return {
    weighted,
    whole: (low, high) => Math.floor(chance.between(low, high + 1)),
    pick: (things) => weighted(things, () => 1),
    happens: (share) => chance.between(0, 1) < share,
  };
}
