import { addDays, weekdayOf, type Day } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { KilnRoom } from '../firings/packing';

/** Parts of a kiln that are changed or mended. */
export const kilnParts = ['elements', 'thermocouple', 'relays', 'shelves', 'other'] as const;
/** One of {@link kilnParts}. */
export type KilnPart = (typeof kilnParts)[number];

/** Each part in words, for a form and a history. */
export const kilnPartWords: Readonly<Record<KilnPart, string>> = {
  elements: 'elements',
  thermocouple: 'thermocouple',
  relays: 'relays',
  shelves: 'shelves',
  other: 'something else',
};

/** A kiln as it is kept, without its history. */
export type KilnFacts = KilnRoom & {
  readonly name: string;
  /** Whole watts, as its plate says. */
  readonly powerW: number;
  /** Decimal cents. */
  readonly centsPerKwh: string;
  readonly wearCents: bigint;
  readonly cones: readonly string[];
  readonly turnsAWeek: number;
  readonly leastFillPercent: number;
  readonly longestWaitDays: number;
  readonly openBelowC: number;
  readonly elementFirings: number;
  readonly note: string;
};

/** Why a kiln was not written down as it was sent. */
export type KilnRefusal =
  | { code: 'no_such_kiln' }
  | { code: 'name_taken'; name: string }
  | { code: 'not_one_shelf_fits' }
  | { code: 'still_burning'; kiln: string; number: number }
  | { code: 'days_backwards' }
  | { code: 'no_such_days' }
  | { code: 'in_the_future' }
  | { code: 'say_what_was_done' };

/** Says in a full sentence why a kiln was not written down. */
export function kilnRefusalMessage(refusal: KilnRefusal): string {
  switch (refusal.code) {
    case 'no_such_kiln':
      return 'That kiln is not in the studio’s list.';
    case 'name_taken':
      return `There is a kiln called ${refusal.name} already. Give this one another name.`;
    case 'not_one_shelf_fits':
      return 'The room inside is lower than one shelf is thick. Measure both once more.';
    case 'still_burning':
      return `Firing ${refusal.number} is still in ${refusal.kiln}. Open it first.`;
    case 'days_backwards':
      return 'The last day comes before the first one.';
    case 'no_such_days':
      return 'Those days are not in the list any more.';
    case 'in_the_future':
      return 'That day has not come yet. Write it down once it is done.';
    case 'say_what_was_done':
      return 'Say in a few words what was done.';
  }
}

/**
 * Decides whether a kiln is written down.
 *
 * @param nameIsTaken whether another kiln is called so
 * @returns refuses, in this order: the name of another one, a room in which no shelf finds place
 */
export function decideKiln(kiln: KilnFacts, nameIsTaken: boolean): Result<true, KilnRefusal> {
  if (nameIsTaken) return refuse({ code: 'name_taken', name: kiln.name });
  if (kiln.shelfThickUm >= kiln.insideHeightUm) return refuse({ code: 'not_one_shelf_fits' });
  return ok(true);
}

/** A firing as far as a kiln’s age and its week ask. */
export type FiringCounted = { readonly litOn: Day; readonly isPlanned: boolean };

/** How old the elements of a kiln are, in firings. */
export type ElementAge = {
  readonly firings: number;
  readonly planned: number;
  readonly unplanned: number;
  /** Firings until they are due; below zero when they are past it. */
  readonly left: number;
  /** When they were last changed; null when nobody wrote it down. */
  readonly sinceOn: Day | null;
};

/**
 * How many firings the elements of a kiln have behind them: those lit on or after the day on which
 * they were changed last.
 *
 * @param lifeFirings for how many they are trusted
 * @source common practice: about 150 firings at cone 6, about 300 low ones
 */
export function elementAge(
  firings: readonly FiringCounted[],
  changedOn: readonly Day[],
  lifeFirings: number,
): ElementAge {
  const sinceOn = changedOn.toSorted().at(-1) ?? null;
  const since = firings.filter(({ litOn }) => sinceOn === null || litOn >= sinceOn);
  const planned = since.filter(({ isPlanned }) => isPlanned).length;
  return {
    firings: since.length,
    planned,
    unplanned: since.length - planned,
    left: lifeFirings - since.length,
    sinceOn,
  };
}

/** The turns of a kiln in the week of a day, Monday to Sunday. */
export type WeekOfTurns = { readonly taken: number; readonly left: number };

/**
 * How many turns a kiln has taken in this week, and how many are left of what it manages.
 *
 * @returns `left` is never below zero
 */
export function turnsThisWeek(
  firings: readonly FiringCounted[],
  turnsAWeek: number,
  todayOn: Day,
): WeekOfTurns {
  const mondayOn = addDays(todayOn, -((weekdayOf(todayOn) + 6) % 7));
  const untilOn = addDays(mondayOn, 7);
  const taken = firings.filter(({ litOn }) => litOn >= mondayOn && litOn < untilOn).length;
  return { taken, left: Math.max(0, turnsAWeek - taken) };
}
