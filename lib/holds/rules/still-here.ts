import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { daysBetween, formatInstant, type Day } from '@/lib/dates/rules';

/** Why a piece was not noted as collected. */
export type CollectRefusal =
  { code: 'not_here_to_collect' } | { code: 'collected_already'; collectedAt: Date };

/** Says in a full sentence why a piece was not noted as collected. */
export function collectRefusalMessage(
  refusal: CollectRefusal | NotAllowed | { code: 'key_used_for_something_else' },
  zone: string,
): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'not_here_to_collect':
      return 'Nothing of the kind is waiting here. Load the page again, please.';
    case 'collected_already':
      return `That was collected ${formatInstant(refusal.collectedAt, zone)} already.`;
  }
}

/**
 * How many days a sold piece has stayed past the day it was to be fetched.
 *
 * @returns nought until that day has passed
 * @example daysLate('2026-11-20', '2026-11-20') // 0: it can be fetched all day
 */
export function daysLate(untilOn: Day, todayOn: Day): number {
  return Math.max(0, daysBetween(untilOn, todayOn));
}
