import { daysBetween, type Day } from '@/lib/dates/rules';
import { shortDay } from '@/lib/studio/rules/words';
import { daysWords } from './words';

/** What was foretold of a job on a day: by when it is ready in 80 of 100. */
export type ForetoldThen = { readonly toldOn: Day; readonly in80On: Day | null };

/** Pieces that were begun anew for lost ones: how many, and since when. */
export type MadeAnew = { readonly pieces: number; readonly sinceOn: Day };

/**
 * What moved the day since it was first foretold, in one sentence.
 *
 * @param before what was kept, the first first
 * @param now the day in 80 of 100 as it is foretold today
 * @returns null when nothing was foretold before today, or nothing moved
 * @example 2 parts are made anew since 3 May: 9 days later than foretold on 1 May.
 */
export function movedSentence(
  before: readonly ForetoldThen[],
  now: { in80On: Day | null; todayOn: Day },
  anew: MadeAnew | null,
): string | null {
  const { in80On: nowOn, todayOn } = now;
  const first = before.find(({ in80On }) => in80On !== null);
  if (!first?.in80On || nowOn === null) return null;
  const later = daysBetween(first.in80On, nowOn);
  if (later === 0 && anew === null) return null;
  const than =
    later === 0
      ? 'still the day that was foretold'
      : `${daysWords(Math.abs(later))} ${later > 0 ? 'later' : 'sooner'} than foretold`;
  const compared = `${than} on ${shortDay(first.toldOn, todayOn)}`;
  if (anew === null) return `That is ${compared}.`;
  const are = anew.pieces === 1 ? 'One piece is' : `${anew.pieces} pieces are`;
  return `${are} made anew since ${shortDay(anew.sinceOn, todayOn)}: ${compared}.`;
}
