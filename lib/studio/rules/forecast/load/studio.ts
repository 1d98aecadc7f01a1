import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import type { ForecastStudio } from '../model';
import type { ClosedSpan, LoadFacts } from './facts';
import { kilnVolumeOf } from './sizes';

/** How far closed days are laid out: before today for what is under way, after it for what comes. */
const daysBack = 400;
const daysAhead = 800;

/** The studio of a forecast, as its settings, benches, kilns and closed days say. */
export function studioOf(facts: LoadFacts): ForecastStudio {
  const closedDays = (of: (span: ClosedSpan) => boolean): Day[] =>
    facts.closed.filter(of).flatMap((span) => daysOf(span, facts.todayOn));
  return {
    closed: {
      weekdays: facts.closedWeekdays.map((weekday) => weekday % 7),
      days: closedDays(({ kilnId, benchId }) => kilnId === null && benchId === null),
    },
    benches: facts.benches.map(({ id, atOnce }) => ({
      ...{ id, atOnce },
      closedDays: closedDays(({ benchId }) => benchId === id),
    })),
    kilns: facts.kilns.map((kiln) => ({
      id: kiln.id,
      volumeCm3: kilnVolumeOf(kiln),
      cones: kiln.cones,
      turnsAWeek: kiln.turnsAWeek,
      leastFillPercent: kiln.leastFillPercent,
      longestWaitDays: kiln.longestWaitDays,
      closedDays: closedDays(({ kilnId }) => kilnId === kiln.id),
      loadsThisWeek: kiln.loadsThisWeek,
    })),
    dryingPercents: facts.dryingPercents,
  };
}

function daysOf({ fromOn, toOn }: ClosedSpan, todayOn: Day): Day[] {
  const first = addDays(todayOn, -daysBack);
  const last = addDays(todayOn, daysAhead);
  const from = fromOn < first ? first : fromOn;
  const count = daysBetween(from, toOn > last ? last : toOn) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, day) => addDays(from, day));
}
