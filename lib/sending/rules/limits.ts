import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import { ownTerms, type CarrierTerms } from './carriers';
import { dayOfEvent, stageOf, type Happened } from './way';

/** A last day, and how many days are left until it: 0 on the day itself, below it when it is past. */
export type Limit = { readonly byOn: Day; readonly daysLeft: number };

/** What limits are told by: the carrier’s days, or our own for what no carrier has. */
export type LimitDays = Pick<CarrierTerms, 'reportDays' | 'claimDays'>;

/**
 * The last days for telling of damage and for claiming it: so many days after it came, and so many
 * after it was sent.
 *
 * Damage that is found before it came is counted from the day it was found.
 *
 * @param terms null for what goes without a carrier’s terms: then {@link ownTerms}
 */
export function limitsOf(
  events: readonly Happened[],
  terms: LimitDays | null,
  days: { foundOn: Day; today: Day },
): { reportBy: Limit; claimBy: Limit } {
  const { reportDays, claimDays } = terms ?? ownTerms;
  const came = dayOfEvent(events, 'arrived') ?? dayOfEvent(events, 'fetched') ?? days.foundOn;
  const left = dayOfEvent(events, 'sent') ?? dayOfEvent(events, 'fetched') ?? days.foundOn;
  const limit = (byOn: Day): Limit => ({ byOn, daysLeft: daysBetween(days.today, byOn) });
  return { reportBy: limit(addDays(came, reportDays)), claimBy: limit(addDays(left, claimDays)) };
}

/** A limit in words: `by 3 Dec, 5 days left`, without the day itself. */
export function leftWords({ daysLeft }: Limit): string {
  if (daysLeft < 0) return daysLeft === -1 ? 'over since yesterday' : `over for ${-daysLeft} days`;
  if (daysLeft === 0) return 'today is the last day';
  return daysLeft === 1 ? 'one day left' : `${daysLeft} days left`;
}

/** From so many days on before a limit it is a warning. */
export const warnDays = 2;

/** What a shipment asks of whoever keeps the room, the most pressing first. */
export type Asks = 'look_at_it' | 'on_the_way' | 'to_pack' | 'nothing';

/**
 * What is to be done about a shipment: to pack and send it, to ask where it is, to look at what came
 * while damage may still be told, or nothing.
 */
export function asksOf(
  shipment: { events: readonly Happened[]; terms: LimitDays | null; isLookedAt: boolean },
  today: Day,
): Asks {
  const { events, terms, isLookedAt } = shipment;
  const stage = stageOf(events);
  if (stage === 'to_pack' || stage === 'packed') return 'to_pack';
  if (stage === 'on_the_way') return 'on_the_way';
  if (stage !== 'arrived' || isLookedAt) return 'nothing';
  const { reportBy } = limitsOf(events, terms, { foundOn: today, today });
  return reportBy.daysLeft < 0 ? 'nothing' : 'look_at_it';
}
