import { invariant } from '@/lib/platform/invariant';

/** The most pieces one job may have, so that a chance of losing none can still be told from 0. */
export const piecesMost = 1_000;

/** How a step loses pieces: each by itself, with the same chance. */
export type LossTable = {
  /** At place n the probability that all of n pieces stay; of the rarer of the two fates. */
  readonly none: Float64Array;
  readonly odds: number;
  /** More are lost than kept: the kept ones are counted instead. */
  readonly countsKept: boolean;
};

/**
 * Lays out the losses of a step for jobs of up to a number of pieces.
 *
 * @param rate from 0, nothing is ever lost, to 1, everything is
 */
export function lossTable(rate: number, pieces: number): LossTable {
  invariant(rate >= 0 && rate <= 1, 'A loss rate lies between 0 and 1.');
  invariant(pieces <= piecesMost, 'A job has at most 1,000 pieces.');
  const countsKept = rate > 0.5;
  const rarer = countsKept ? 1 - rate : rate;
  const none = Float64Array.from({ length: pieces + 1 }, (_, count) => (1 - rarer) ** count);
  return { none, odds: rarer / (1 - rarer), countsKept };
}

/**
 * How many of some pieces are lost: binomial, found by going up its probabilities until a chance
 * is reached.
 *
 * @param chance 32 bits, with or without a sign
 */
export function piecesLost(table: LossTable, pieces: number, chance: number): number {
  let left = (chance >>> 0) / 4_294_967_296;
  let weight = table.none[pieces] ?? 0;
  let count = 0;
  while (left >= weight && count < pieces) {
    left -= weight;
    count += 1;
    weight *= ((pieces - count + 1) / count) * table.odds;
  }
  return table.countsKept ? pieces - count : count;
}
