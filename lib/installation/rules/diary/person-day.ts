import { wayMinutes, type PlaceToGo, type Ways } from '@/lib/installation/rules/crew/ways';
import type { Span } from './kinds';

/** What somebody does one after the other on a day: ways, and what they go to. */
export type DayStep<Booked> =
  | { readonly kind: 'leaves'; readonly at: Date }
  | { readonly kind: 'way'; readonly minutes: number; readonly isShort: boolean }
  | { readonly kind: 'booked'; readonly appointment: Booked }
  | { readonly kind: 'back'; readonly at: Date };

/**
 * The day of somebody with its ways: from the gallery, from place to place, and back. Where no way
 * is known, and between two that are at the same place, there is no step for it.
 *
 * @param booked what they go to that day and what was not called off, in time
 */
export function stepsOfDay<Booked extends Span & PlaceToGo>(
  booked: readonly Booked[],
  ways: Ways,
): DayStep<Booked>[] {
  const steps: DayStep<Booked>[] = [];
  booked.forEach((appointment, at) => {
    const before = booked[at - 1];
    steps.push(...(before ? wayBetween(before, appointment, ways) : leaving(appointment)));
    steps.push({ kind: 'booked', appointment });
  });
  const last = booked.at(-1);
  if (last && last.travelMinutes > 0) {
    steps.push({ kind: 'back', at: new Date(last.endsAt.getTime() + last.travelMinutes * 60_000) });
  }
  return steps;
}

function leaving({ startsAt, travelMinutes }: Span & PlaceToGo): DayStep<never>[] {
  if (travelMinutes === 0) return [];
  return [{ kind: 'leaves', at: new Date(startsAt.getTime() - travelMinutes * 60_000) }];
}

function wayBetween(
  before: Span & PlaceToGo,
  after: Span & PlaceToGo,
  ways: Ways,
): DayStep<never>[] {
  const minutes = wayMinutes(before, after, ways);
  if (minutes === 0) return [];
  const gap = (after.startsAt.getTime() - before.endsAt.getTime()) / 60_000;
  return [{ kind: 'way', minutes, isShort: gap < minutes }];
}
