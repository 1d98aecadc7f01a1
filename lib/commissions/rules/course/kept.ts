import { daysBetween, formatDay, type Day } from '@/lib/dates/rules';
import type { Clock } from '@/lib/commissions/rules/facts';

/** One thing that was said about the promised day, in the order it was said. */
export type PromiseSaid = {
  saidOn: Day;
  /** The day that was named; null where the day fell away. */
  dayOn: Day | null;
  kind: 'agreed' | 'changed' | 'told';
  words: string;
};

/** What can be said about a promise: the agreement, signed changes of the day, notices of delay. */
export type PromiseFacts = {
  agreed: { on: Day; promisedOn: Day | null } | null;
  changes: readonly { number: number; signedOn: Day; promisedOn: Day | null }[];
  notices: readonly { toldOn: Day; toOn: Day; clock: Clock; why: string; toldHow: string }[];
};

/**
 * Everything that was said about the day, in its order: the original, the signed changes, the
 * notices of delay. A notice tells; only a signed change moves the promise.
 */
export function promiseSaid({ agreed, changes, notices }: PromiseFacts): PromiseSaid[] {
  if (!agreed) return [];
  const said: PromiseSaid[] = [
    { saidOn: agreed.on, dayOn: agreed.promisedOn, kind: 'agreed', words: 'The agreement' },
    ...changes.map(({ number, signedOn, promisedOn }) => ({
      ...{ saidOn: signedOn, dayOn: promisedOn, kind: 'changed' as const },
      words: `Change order ${number}, signed`,
    })),
    ...notices.map(({ toldOn, toOn, why, toldHow }) => ({
      ...{ saidOn: toldOn, dayOn: toOn, kind: 'told' as const },
      words: `Told ${toldHow}: ${why}`,
    })),
  ];
  return said.toSorted((one, other) => one.saidOn.localeCompare(other.saidOn));
}

/**
 * Whether a promise was kept, in words.
 *
 * @param doneOn the day of the hand-over; null while it is to come
 * @returns null where no day was promised
 * @example keptWords('2026-05-01', '2026-05-04', '2026-06-01') // 'handed over 3 days after the promised day'
 */
export function keptWords(promisedOn: Day | null, doneOn: Day | null, today: Day): string | null {
  if (promisedOn === null) return null;
  const days = daysBetween(promisedOn, doneOn ?? today);
  if (doneOn === null) {
    if (days <= 0) return null;
    return `promised for ${formatDay(promisedOn, 'short')}: ${daysWords(days)} over`;
  }
  if (days > 0) return `handed over ${daysWords(days)} after the promised day`;
  return days === 0
    ? 'handed over on the promised day'
    : `handed over ${daysWords(-days)} before the promised day`;
}

function daysWords(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}
