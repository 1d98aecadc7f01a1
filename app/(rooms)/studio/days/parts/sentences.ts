import type { Day } from '@/lib/dates/rules';
import { dayOrFar } from '@/lib/studio/rules/forecast/telling/words';
import { shortDay } from '@/lib/studio/rules/words';
import type { ThreeFolds } from './day-line';

/** `Ready by 20 June in 80 of 100; by 11 June in 50, by 2 July in 95.` */
export function readySentence({ in50, in80, in95 }: ThreeFolds, todayOn: Day): string {
  const by = (day: Day | null) => (day ? `by ${shortDay(day, todayOn)}` : dayOrFar(day, todayOn));
  return `Ready ${by(in80)} in 80 of 100; ${by(in50)} in 50, ${by(in95)} in 95.`;
}

/** `Needed by 14 June: late in 23 of 100.` */
export function lateWords(late: number, neededOn: Day, todayOn: Day): string {
  const needed = `Needed by ${shortDay(neededOn, todayOn)}`;
  if (neededOn < todayOn) return `${needed}, which is over.`;
  return late === 0 ? `${needed}: in time in all of 100.` : `${needed}: late in ${late} of 100.`;
}
