import type { Cents } from '@/lib/money/rules';
import { divideRounded } from '@/lib/money/rules/decimal';
import { earnedByTurn, type TurnTaken } from '@/lib/studio/rules/kilns/turns';

/** What a piece brings for each turn of a kiln and each hour of hands; null where neither is known. */
export type Earned = {
  readonly centsPerTurn: Cents | null;
  readonly centsPerHour: Cents | null;
};

/**
 * What a turn of the kiln and an hour of hands earn with a piece: what it brings, over the turns and
 * over the time that one good piece takes.
 *
 * @param netCents what one brings
 * @param borneMinuteHundredths hands for one good piece, those that are lost included
 * @source common practice: what fills the kiln best is seldom what fills the hours best
 * @example a tile of $52 of which 80 fill the kiln, two firings, 35 minutes
 *   // 208_000n a turn, 8_914n an hour
 */
export function earnedWith(
  netCents: Cents,
  turns: readonly TurnTaken[] | null,
  borneMinuteHundredths: number,
): Earned {
  const byTurn = turns === null ? null : earnedByTurn(netCents, turns);
  return {
    centsPerTurn: byTurn?.ok ? byTurn.value.centsPerTurn : null,
    centsPerHour:
      borneMinuteHundredths > 0
        ? divideRounded(netCents * 6_000n, BigInt(borneMinuteHundredths), 'half-up')
        : null,
  };
}
