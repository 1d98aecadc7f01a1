import { monthOf, type Day } from '@/lib/dates/rules';
import type { ForecastJob, ForecastStep, ForecastStudio, Holding } from '../model';
import { casesOf, casesOfDays } from '../pert';

/** The cases of days of every step, each kind of days once. */
export type Cases = {
  readonly seasons: number;
  readonly seasonOn: (day: Day) => number;
  readonly cases: Int16Array;
  /** Where the cases of a step in a season begin. */
  readonly from: (step: ForecastStep, season: number) => number;
};

/** Lays out the days of every step in every season. */
export function layCases(studio: ForecastStudio, jobs: readonly ForecastJob[]): Cases {
  const percents = [...new Set(studio.dryingPercents)];
  const seasonOn = (day: Day): number => {
    const month = Number(monthOf(day).slice(5));
    return percents.indexOf(studio.dryingPercents[month - 1] ?? 100);
  };
  const places = new Map<string, number>();
  const tables: Int16Array[] = [];
  const factor = (step: Holding, season: number): number =>
    step.kind === 'dry' ? (percents[season] ?? 100) / 100 : 1;
  const from = (step: ForecastStep, season: number): number => {
    const by = factor(step, season);
    const days = {
      shortestDays: step.shortestDays * by,
      likelyDays: step.likelyDays * by,
      longestDays: step.longestDays * by,
    };
    const name = `${days.shortestDays} ${days.likelyDays} ${days.longestDays}`;
    const known = places.get(name);
    if (known !== undefined) return known;
    const place = tables.length * casesOfDays;
    places.set(name, place);
    tables.push(casesOf(days));
    return place;
  };
  for (const step of jobs.flatMap((job) => job.steps)) percents.forEach((_, at) => from(step, at));
  const cases = new Int16Array(tables.length * casesOfDays);
  tables.forEach((table, at) => cases.set(table, at * casesOfDays));
  return { seasons: percents.length, seasonOn, cases, from };
}
