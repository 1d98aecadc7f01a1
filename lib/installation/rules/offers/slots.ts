import { addDays, dayOf, daysBetween, type Day } from '@/lib/dates/rules';
import { clockTime } from '@/lib/dates/rules/time-of-day';
import { elsewhereThen, goesAround, type Busy } from '@/lib/installation/rules/crew/busy';
import {
  hoursOn,
  minuteOf,
  timeOfMinute,
  type AbsentSpan,
} from '@/lib/installation/rules/crew/hours';
import type { PlaceToGo, Ways } from '@/lib/installation/rules/crew/ways';
import type { Span } from '@/lib/installation/rules/diary/kinds';
import { findQuestions, type ReadyBy } from '@/lib/installation/rules/diary/questions';
import { readTime } from '@/lib/installation/rules/diary/when';

/** What is known when free times are looked for. */
export type SlotFacts = {
  readonly zone: string;
  readonly now: Date;
  readonly place: PlaceToGo;
  readonly crew: readonly Busy[];
  readonly ways: Ways;
  readonly closed: readonly AbsentSpan[];
  /** Null when the piece is ready, or none goes along. */
  readonly ready: ReadyBy | null;
  /** Before this nothing hangs; null where nothing cures. */
  readonly curesAt: Date | null;
};

/** Within which days, both included, and how long it takes. */
export type SlotWish = { readonly fromOn: Day; readonly untilOn: Day; readonly minutes: number };

/** The longest stretch in which free times are looked for, in days. */
export const stretchMost = 92;

/** Times begin on the half hour. */
const stepMinutes = 30;
const noonMinute = 720;

/**
 * Free times for all who go along: inside everyone's hours with the way there and back, nobody away
 * or elsewhere, time enough from and to what they have around it, the piece ready, the adhesive
 * cured, nothing closed.
 *
 * @returns of each day the first in the morning, and the first after it from noon on
 */
export function freeSlots(facts: SlotFacts, { fromOn, untilOn, minutes }: SlotWish): Span[] {
  const days = Math.min(daysBetween(fromOn, untilOn) + 1, stretchMost);
  const found: Span[] = [];
  for (let ahead = 0; ahead < days; ahead += 1) {
    const day = addDays(fromOn, ahead);
    const morning = firstFree(facts, day, { from: 0, until: noonMinute, minutes });
    const over = morning ? minuteOf(clockTime(morning.endsAt, facts.zone)) : 0;
    const from = Math.max(noonMinute, over);
    const later = firstFree(facts, day, { from, until: 1_440, minutes });
    found.push(...[morning, later].filter((slot) => slot !== null));
  }
  return found;
}

type Part = { from: number; until: number; minutes: number };

function firstFree(facts: SlotFacts, day: Day, { from, until, minutes }: Part): Span | null {
  const opens = Math.max(
    ...facts.crew.map((one) => hoursOn(one.workDays, day)?.fromMinute ?? 1_440),
  );
  const earliest = Math.ceil(Math.max(from, opens) / stepMinutes) * stepMinutes;
  for (let minute = earliest; minute < until; minute += stepMinutes) {
    const starts = readTime(day, timeOfMinute(minute), facts.zone);
    if (!starts.ok) continue;
    const endsAt = new Date(starts.value.getTime() + minutes * 60_000);
    const span = { startsAt: starts.value, endsAt };
    if (isFree(facts, span, day)) return span;
  }
  return null;
}

function isFree(facts: SlotFacts, span: Span, day: Day): boolean {
  const { zone, now, place, ways, closed, ready, curesAt, crew } = facts;
  if (span.startsAt <= now || dayOf(span.endsAt, zone) !== day) return false;
  if (curesAt && span.startsAt < curesAt) return false;
  if (elsewhereThen(crew, span)) return false;
  const goes = crew.map((one) => goesAround(one, span));
  const asked = { zone, place, ways, closed, ready, owedCents: 0n, crew: goes };
  return findQuestions(asked, span).length === 0;
}

/**
 * Which of the free times are ticked to begin with: one of each day before a second of any.
 *
 * @returns at most `most`, in time
 */
export function tickedFirst(slots: readonly Span[], most: number, zone: string): Span[] {
  const seen = new Set<Day>();
  const [first, second]: [Span[], Span[]] = [[], []];
  for (const slot of slots) {
    const day = dayOf(slot.startsAt, zone);
    (seen.has(day) ? second : first).push(slot);
    seen.add(day);
  }
  return [...first, ...second]
    .slice(0, most)
    .toSorted((one, other) => one.startsAt.getTime() - other.startsAt.getTime());
}

/** What is known when it is asked whether an offered day can still be. */
export type StillFacts = Pick<SlotFacts, 'zone' | 'place' | 'crew' | 'ways'> & {
  /** What a hanging stands on; null for anything else. */
  readonly hangsOn: { isWallKnown: boolean; curesAt: Date | null } | null;
};

/**
 * Whether an offered day can still be: it is to come, everyone is free and there, with time for the
 * way, and a hanging has its wall and its cured adhesive. What the gallery knew when it offered
 * the day is not asked again.
 */
export function canStillBe(facts: StillFacts, span: Span, now: Date): boolean {
  const { hangsOn, crew, ...asked } = facts;
  if (span.startsAt <= now || elsewhereThen(crew, span)) return false;
  if (hangsOn && !hangsOn.isWallKnown) return false;
  if (hangsOn?.curesAt && span.startsAt < hangsOn.curesAt) return false;
  const goes = crew.map((one) => goesAround(one, span));
  const questions = findQuestions(
    { ...asked, crew: goes, ready: null, owedCents: 0n, closed: [] },
    span,
  );
  return !questions.some(({ about }) => about === 'travel_short' || about === 'absent');
}
