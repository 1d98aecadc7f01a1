import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import type { Day } from '@/lib/dates/rules';
import type { ReadyDays } from '@/lib/studio/rules/days';

/** How sure a promised day is, from the surest on. */
export type Sureness =
  'finished' | 'well in time' | 'likely in time' | 'tight' | 'too late as it stands';

/**
 * How sure a promised day is, by when the jobs are ready with all that waits in the studio.
 *
 * @param ready for each job of the commission the days by which it is ready in 50, 80 and 95 of 100
 *   (shortest, likely, longest); null for a finished one
 * @returns null while no job is open: then nothing is known
 * @example the 95-day after the promise and the 80-day before it: 'likely in time'
 */
export function sureness(promisedOn: Day, ready: readonly (ReadyDays | null)[]): Sureness | null {
  if (ready.length === 0) return null;
  const open = ready.filter((days) => days !== null);
  if (open.length === 0) return 'finished';
  if (open.every((days) => days.longestOn <= promisedOn)) return 'well in time';
  if (open.every((days) => days.likelyOn <= promisedOn)) return 'likely in time';
  if (open.every((days) => days.shortestOn <= promisedOn)) return 'tight';
  return 'too late as it stands';
}

/**
 * The day they were told of last, where it is another one than the promised day. A change order that
 * was signed on a later day names the day anew, and ends the notice.
 *
 * @example promised for 1 May, told of 9 May // '2026-05-09'
 */
export function toldDay({
  agreement,
  delays,
  changeOrders,
}: Pick<CommissionFacts, 'agreement' | 'delays' | 'changeOrders'>): Day | null {
  const last = delays.at(-1);
  if (!last || last.toOn === agreement?.promisedOn) return null;
  const isNamedAnew = changeOrders.some(
    ({ signedOn }) => signedOn !== null && signedOn > last.toldOn,
  );
  return isNamedAnew ? null : last.toOn;
}
