import { ok, refuse, type Result } from '@/lib/platform/result';

/** For how many days an address opens the page unless somebody says otherwise. */
export const linkDaysUsual = 60;
/** The fewest and the most days for which an address is made. */
export const linkDaysBetween = { least: 7, most: 180 } as const;
/** How many answers one address may send within an hour. */
export const answersPerHour = 60;

const dayMs = 86_400_000;

/** What is known of an address: when it runs out, and whether it was withdrawn. */
export type LinkTimes = { readonly runsOutAt: Date; readonly withdrawnAt: Date | null };

/**
 * Whether a text has the shape of a page's secret: 32 bytes in base64url, 43 letters.
 *
 * Anything else is not looked for in the database.
 *
 * @source RFC 4648, section 5: the alphabet for addresses and file names
 * @example isToken('../../sign-in') // false
 */
export function isToken(text: string): boolean {
  return /^[A-Za-z0-9_-]{43}$/.test(text);
}

/** The instant at which an address made now for so many days runs out; it opens nothing then. */
export function runsOutAt(madeAt: Date, days: number): Date {
  return new Date(madeAt.getTime() + days * dayMs);
}

/**
 * Whether an address opens the page at an instant.
 *
 * @example one that runs out at noon does not open it at noon
 */
export function linkIsOpen(link: LinkTimes, at: Date): boolean {
  return link.withdrawnAt === null && at < link.runsOutAt;
}

/** Why an address does not let an answer through. */
export type LinkRefusal = { code: 'link_shut' } | { code: 'too_many_answers' };

/**
 * Decides whether an answer may still come through an address.
 *
 * @param link null where there is none of that name
 * @param answers how many came through it in the hour before
 * @returns refuses, in this order: `link_shut` for unknown, withdrawn and run out alike, then
 *   `too_many_answers`
 */
export function decideAnswer(
  link: LinkTimes | null,
  answers: number,
  at: Date,
): Result<true, LinkRefusal> {
  if (!link || !linkIsOpen(link, at)) return refuse({ code: 'link_shut' });
  return answers >= answersPerHour ? refuse({ code: 'too_many_answers' }) : ok(true);
}

/** How an address stands, in words for those who work here. */
export function linkWords(link: LinkTimes, at: Date): 'open' | 'withdrawn' | 'run out' {
  if (link.withdrawnAt !== null) return 'withdrawn';
  return at < link.runsOutAt ? 'open' : 'run out';
}
