import { daysBetween, type Day } from '@/lib/dates/rules';
import { daysWords } from './words';

/** A finished job: what was first foretold of it, and when enough of it was finished. */
export type PastJob = {
  readonly number: number;
  readonly title: string;
  readonly toldOn: Day;
  readonly in50On: Day | null;
  readonly in80On: Day;
  readonly in95On: Day | null;
  readonly finishedOn: Day;
};

/** A promised day of an agreement, and the day of the hand-over. */
export type PastPromise = {
  readonly commissionNumber: number;
  readonly title: string;
  readonly promisedOn: Day;
  readonly handedOn: Day;
};

/** How many were ready by the days that were foretold of them. */
export type PastShares = {
  readonly jobs: number;
  readonly by50: number;
  readonly by80: number;
  readonly by95: number;
  /** Half of them were finished so many days after their 80-day or earlier; below 0 before it. */
  readonly medianLateDays: number | null;
};

/** How many promises were kept, and how late the others were. */
export type PastPromises = {
  readonly promises: number;
  readonly kept: number;
  /** Over all of them, below 0 when sooner than promised; and over the late ones. */
  readonly medianLateDays: number | null;
  readonly medianOfLateDays: number | null;
};

/** With fewer than so many, a share says little. */
export const fewPast = 10;

/** Days between the 80-day and the day it was finished; below 0 before it. */
export function lateDaysOf({ in80On, finishedOn }: Pick<PastJob, 'in80On' | 'finishedOn'>): number {
  return daysBetween(in80On, finishedOn);
}

/** How the first days that were foretold turned out; a day out of sight was kept by any. */
export function pastShares(jobs: readonly PastJob[]): PastShares {
  const by = (day: (job: PastJob) => Day | null) =>
    jobs.filter((job) => {
      const told = day(job);
      return told === null || job.finishedOn <= told;
    }).length;
  return {
    jobs: jobs.length,
    by50: by((job) => job.in50On),
    by80: by((job) => job.in80On),
    by95: by((job) => job.in95On),
    medianLateDays: medianOf(jobs.map(lateDaysOf)),
  };
}

/** How promised days were kept. */
export function pastPromises(all: readonly PastPromise[]): PastPromises {
  const late = all.map(({ promisedOn, handedOn }) => daysBetween(promisedOn, handedOn));
  return {
    promises: all.length,
    kept: late.filter((days) => days <= 0).length,
    medianLateDays: medianOf(late),
    medianOfLateDays: medianOf(late.filter((days) => days > 0)),
  };
}

/** The middle one; of an even number the lower of the two in the middle. Null of none. */
export function medianOf(numbers: readonly number[]): number | null {
  const inOrder = numbers.toSorted((one, other) => one - other);
  return inOrder[Math.floor((inOrder.length - 1) / 2)] ?? null;
}

/** What the past says of the foretold days, in a sentence that says how little it knows. */
export function pastSentence(shares: PastShares): string {
  const { jobs, by80 } = shares;
  if (jobs === 0) return 'No job was finished yet of which a day was foretold.';
  const count = jobs === 1 ? 'Of one job' : `Of ${jobs} jobs`;
  const ready = wereWords(by80);
  const told = `${count} ${ready} ready by the day that was foretold in 80 of 100.`;
  if (jobs >= fewPast) return told;
  return `${told} So few say little: look again when there are ${fewPast}.`;
}

/** How promises were kept, in a sentence that says how little it knows. */
export function promisesSentence(told: PastPromises): string {
  const { promises, kept, medianOfLateDays } = told;
  const count = promises === 1 ? 'Of one promised day' : `Of ${promises} promised days`;
  const were = wereWords(kept);
  const late =
    medianOfLateDays === null
      ? ''
      : ` Half of the late ones were ${daysWords(medianOfLateDays)} late or less.`;
  const few = promises < fewPast ? ` So few say little: look again when there are ${fewPast}.` : '';
  return `${count} ${were} kept.${late}${few}`;
}

/** The middle of all, in words: `In the middle they were 3 days after the promised day.` */
export function middleWords(medianLateDays: number | null, day: string): string {
  if (medianLateDays === null) return '';
  if (medianLateDays === 0) return `In the middle they were ready on ${day} itself.`;
  const side = medianLateDays > 0 ? 'after' : 'before';
  return `In the middle they were ready ${daysWords(Math.abs(medianLateDays))} ${side} ${day}.`;
}

function wereWords(count: number): string {
  if (count === 0) return 'none was';
  return count === 1 ? '1 was' : `${count} were`;
}
