import type { Day } from '@/lib/dates/rules';
import { spanOf, type Span } from '@/lib/installation/rules';

/** The instants of a day and its times that the clocks show. */
export function spanAt(day: Day, from: string, to: string, zone = 'America/Los_Angeles'): Span {
  const span = spanOf({ day, from, to }, zone);
  if (!span.ok) throw new Error(`There is no ${span.refusal.time} on ${day}.`);
  return span.value;
}
