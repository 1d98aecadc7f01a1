import { isAllowed, notAllowedMessage, type Actor, type NotAllowed } from '@/lib/access/rules';
import { addDays, dayOf, dayStartAt } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** How many days back and ahead a calendar reaches. */
export const calendarDays = { back: 60, ahead: 730 } as const;

/** How many open addresses one person's calendar has at the most. */
export const feedsMost = 10;

/** The secret in the last part of an address, which may close with `.ics`. */
export function secretOf(lastPart: string): string {
  return lastPart.replace(/\.ics$/, '');
}

/** The stretch of time that a calendar tells of: from sixty days back until two years ahead. */
export function calendarStretch(at: Date, zone: string): { fromAt: Date; untilAt: Date } {
  const today = dayOf(at, zone);
  return {
    fromAt: dayStartAt(addDays(today, -calendarDays.back), zone),
    untilAt: dayStartAt(addDays(today, calendarDays.ahead), zone),
  };
}

/** Why no address was made or withdrawn. */
export type FeedRefusal =
  | { code: 'no_such_person' }
  | { code: 'not_your_calendar' }
  | { code: 'too_many_feeds' }
  | { code: 'no_such_feed' }
  | { code: 'feed_shut_already' };

/** Whether somebody keeps the addresses of a calendar: their own, and the owner everyone's. */
export function keepsCalendarOf(actor: Actor, staffId: string): boolean {
  return actor.id === staffId || isAllowed(actor.roles, 'staff.keep');
}

/**
 * Decides whether somebody may have one more address of a calendar.
 *
 * @param person null where there is nobody of that id, or they no longer work here
 * @param open how many addresses of theirs are open
 * @returns refuses, in this order: no such person, not your calendar, too many
 */
export function decideFeed(
  actor: Actor,
  person: { readonly id: string } | null,
  open: number,
): Result<true, FeedRefusal> {
  if (!person) return refuse({ code: 'no_such_person' });
  if (!keepsCalendarOf(actor, person.id)) return refuse({ code: 'not_your_calendar' });
  return open >= feedsMost ? refuse({ code: 'too_many_feeds' }) : ok(true);
}

/**
 * Decides whether somebody may withdraw an address of a calendar.
 *
 * @returns refuses, in this order: no such address, not your calendar, withdrawn already
 */
export function decideShutting(
  actor: Actor,
  feed: { readonly staffId: string; readonly withdrawnAt: Date | null } | null,
): Result<true, FeedRefusal> {
  if (!feed) return refuse({ code: 'no_such_feed' });
  if (!keepsCalendarOf(actor, feed.staffId)) return refuse({ code: 'not_your_calendar' });
  return feed.withdrawnAt ? refuse({ code: 'feed_shut_already' }) : ok(true);
}

/** Says why no address of a calendar was made or withdrawn. */
export function feedRefusalMessage(refusal: FeedRefusal): string {
  switch (refusal.code) {
    case 'no_such_person':
      return 'Nobody of that name works here.';
    case 'not_your_calendar':
      return 'Each keeps their own calendar’s addresses; the owner keeps everyone’s.';
    case 'too_many_feeds':
      return `There are ${feedsMost} addresses of this calendar already. Withdraw one that is not used.`;
    case 'no_such_feed':
      return 'There is no such address of a calendar.';
    case 'feed_shut_already':
      return 'It was withdrawn already, and opens nothing.';
  }
}

/** The same, with no leave and a form that was sent before. */
export function anyFeedRefusalMessage(
  refusal: FeedRefusal | NotAllowed | { code: 'key_used_for_something_else' },
): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'key_used_for_something_else') {
    return 'This page was sent before with something else in it. Load it again, please.';
  }
  return feedRefusalMessage(refusal);
}
