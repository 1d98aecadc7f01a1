import type { Cents } from '@/lib/money/rules';
import { divideRounded } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** What a job took up of one load, and what that kiln holds; both in the same unit, of any kind. */
export type TurnTaken = { readonly used: bigint; readonly holds: bigint };

/** What a kiln’s turns earned. */
export type TurnsEarned = {
  /** Turns that were taken, in thousandths: 8_000 for eight whole ones. */
  readonly turnThousandths: number;
  readonly centsPerTurn: Cents;
};

/** Why it was not worked out what a turn earned. */
export type TurnRefusal = { code: 'no_turns' } | { code: 'more_than_it_holds'; place: number };

/** Says in a full sentence why it was not worked out what a turn earned. */
export function turnRefusalMessage(refusal: TurnRefusal): string {
  return refusal.code === 'no_turns'
    ? 'No turn of a kiln was taken yet, so none has earned anything.'
    : `Load ${refusal.place} takes up more than the kiln holds, or nothing. Look at it once more.`;
}

/**
 * What a turn of the kiln earned: what came in for the pieces, over the turns they took.
 *
 * A turn that is partly filled by a job counts for it by the part that it fills; the kiln is what a
 * studio has least of, so this tells which work fills it best. The hours of hands are beside it.
 *
 * @param earnedCents what the pieces brought; below zero mirrors
 * @returns turns in thousandths and cents a turn, both half up; refuses no turns at all, then a load
 *   in which nothing or more than the kiln holds is taken up
 * @source common practice
 * @example $11,400 over eight whole turns // 142_500n a turn
 */
export function earnedByTurn(
  earnedCents: Cents,
  loads: readonly TurnTaken[],
): Result<TurnsEarned, TurnRefusal> {
  if (loads.length === 0) return refuse({ code: 'no_turns' });
  const wrong = loads.findIndex(({ used, holds }) => used <= 0n || used > holds);
  if (wrong >= 0) return refuse({ code: 'more_than_it_holds', place: wrong + 1 });
  const turns = loads.reduce(
    (sum, { used, holds }) => ({
      over: sum.over * holds + used * sum.under,
      under: sum.under * holds,
    }),
    { over: 0n, under: 1n },
  );
  return ok({
    turnThousandths: Number(divideRounded(turns.over * 1_000n, turns.under, 'half-up')),
    centsPerTurn: divideRounded(earnedCents * turns.under, turns.over, 'half-up'),
  });
}
