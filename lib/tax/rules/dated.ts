import { formatDay, type Day } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { combinedRatePercent, ratesOn } from '../rules';
import { parseDecimal } from '@/lib/money/rules/decimal';

/** One authority's rate with the days on which it holds; `untilOn` is the first day it does not. */
export type DatedRate = Readonly<{
  id: string;
  authority: string;
  /** A decimal of at most five places, such as '8.375'. */
  ratePercent: string;
  fromOn: Day;
  untilOn: Day | null;
}>;

/** Why a rate was not taken. */
export type RateRefusal =
  | { code: 'rate_follows_already'; authority: string; fromOn: Day }
  | { code: 'rates_above_hundred'; togetherPercent: string }
  | { code: 'rate_unknown' }
  | { code: 'rate_ends_before_it_begins'; fromOn: Day };

/**
 * Which rate a new one takes the place of, if it may.
 *
 * @param rates all of the place, in any order
 * @returns the rate to close on the new one's first day, null when there is none open; refuses
 *   `rate_follows_already` when this authority has a rate from that day or a later one, or one that
 *   still holds then and has its end, and `rates_above_hundred` when all would reach 100 in 100
 * @example a county's 1.5 from 1 July closes its 1.2, whose last day is then 30 June
 */
export function decideRate(
  rates: readonly DatedRate[],
  rate: Pick<DatedRate, 'authority' | 'ratePercent' | 'fromOn'>,
): Result<DatedRate | null, RateRefusal> {
  const { authority, fromOn } = rate;
  const own = rates.filter((each) => each.authority === authority);
  const inTheWay = own.find((each) => each.fromOn >= fromOn || (each.untilOn ?? '') > fromOn);
  if (inTheWay) {
    return refuse({ code: 'rate_follows_already', authority, fromOn: inTheWay.fromOn });
  }
  const beside = ratesOn(rates, fromOn).filter((each) => each.authority !== authority);
  const togetherPercent = combinedRatePercent(
    [...beside, rate].map(({ authority: name, ratePercent }) => ({ name, ratePercent })),
  );
  if (isHundredOrMore(togetherPercent)) {
    return refuse({ code: 'rates_above_hundred', togetherPercent });
  }
  return ok(own.find((each) => each.untilOn === null) ?? null);
}

/** Says in a full sentence why a rate was not taken. */
export function rateRefusalMessage(refusal: RateRefusal): string {
  switch (refusal.code) {
    case 'rate_follows_already':
      return `${refusal.authority} has a rate from ${formatDay(refusal.fromOn, 'short')} that reaches into these days. Choose a later first day.`;
    case 'rates_above_hundred':
      return `Together the rates would be ${refusal.togetherPercent} in a hundred. Look at the figure again.`;
    case 'rate_unknown':
      return 'That rate has ended already. Look at the list again.';
    case 'rate_ends_before_it_begins':
      return `That rate begins on ${formatDay(refusal.fromOn, 'short')}; it can end on a later day.`;
  }
}

function isHundredOrMore(percent: string): boolean {
  const decimal = parseDecimal(percent);
  return decimal === null || decimal.units >= 100n * 10n ** BigInt(decimal.scale);
}
