import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';

/** How long something has been owed past its day, as the list of what is owed tells it. */
export const ages = [
  { age: 'not_due', words: 'not due yet' },
  { age: 'late_30', words: 'up to 30 days late' },
  { age: 'late_60', words: '31 to 60 days late' },
  { age: 'later', words: 'more than 60 days late' },
] as const;

/** One of the {@link ages}. */
export type Age = (typeof ages)[number]['age'];

/**
 * How old a debt is on a day.
 *
 * @example ageOf('2026-04-15', '2026-04-15') // 'not_due': its own day is still in time
 */
export function ageOf(dueOn: Day, today: Day): Age {
  const late = daysBetween(dueOn, today);
  if (late <= 0) return 'not_due';
  if (late <= 30) return 'late_30';
  return late <= 60 ? 'late_60' : 'later';
}

/** What is owed of each age, in cents; what is paid is left out. */
export function owedByAge(
  debts: readonly { dueOn: Day; owedCents: Cents }[],
  today: Day,
): Record<Age, Cents> {
  const of = (age: Age) =>
    sumCents(
      debts.filter(({ dueOn }) => ageOf(dueOn, today) === age).map(({ owedCents }) => owedCents),
    );
  return {
    not_due: of('not_due'),
    late_30: of('late_30'),
    late_60: of('late_60'),
    later: of('later'),
  };
}

/** A piece is swapped after this many days without a buyer; common practice says 90 to 120. */
export const sitsTooLongDays = 120;

/**
 * Whether a piece has sat too long with another gallery.
 *
 * @example sitsTooLong('2026-01-01', '2026-05-01') // false: 120 days are not more than 120
 */
export function sitsTooLong(sinceOn: Day, today: Day): boolean {
  return daysBetween(sinceOn, today) > sitsTooLongDays;
}

/** The day on which a statement is to be paid: so many days after the last day it tells of. */
export function dueOnOf(untilOn: Day, payDays: number): Day {
  return addDays(untilOn, payDays);
}
