import type { Day } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { EventKind, SentHow, Stage } from './words';

/** Something that happened to a shipment, and on which day. */
export type Happened = { readonly kind: EventKind; readonly on: Day };

/** What is known of a shipment when something happens to it. */
export type WayFacts = {
  readonly how: SentHow;
  /** As it stands on the label; empty while nobody wrote it. */
  readonly carrier: string;
  readonly events: readonly Happened[];
  /** How many boxes there are, and the first that is empty. */
  readonly boxes: number;
  readonly emptyBox: number | null;
  /** When it was sold; null for what is no sale's. */
  readonly soldOn: Day | null;
};

/** Why something did not happen to a shipment. */
export type WayRefusal =
  | { code: 'was_called_off'; on: Day }
  | { code: 'happened_already'; kind: EventKind; on: Day }
  | { code: 'not_on_the_way'; stage: Stage }
  | { code: 'goes_otherwise'; how: SentHow }
  | { code: 'no_boxes_yet' }
  | { code: 'box_is_empty'; box: number }
  | { code: 'no_carrier_named' }
  | { code: 'day_to_come'; today: Day }
  | { code: 'sent_before_sold'; soldOn: Day }
  | { code: 'before_it'; kind: EventKind; on: Day };

/** Where a shipment stands, by what happened. */
export function stageOf(events: readonly Pick<Happened, 'kind'>[]): Stage {
  const has = (kind: EventKind) => events.some((event) => event.kind === kind);
  if (has('called_off')) return 'called_off';
  if (has('fetched')) return 'fetched';
  if (has('arrived')) return 'arrived';
  if (has('sent')) return 'on_the_way';
  return has('packed') ? 'packed' : 'to_pack';
}

/** Whether what is in the boxes may still be changed. */
export function isOpen(events: readonly Pick<Happened, 'kind'>[]): boolean {
  const stage = stageOf(events);
  return stage === 'to_pack' || stage === 'packed';
}

/** The day on which something happened; null when it did not. */
export function dayOfEvent(events: readonly Happened[], kind: EventKind): Day | null {
  return events.find((event) => event.kind === kind)?.on ?? null;
}

/**
 * Decides whether something can happen to a shipment on a day.
 *
 * @returns refuses, in this order: called off, it happened already, it has left or not left, it goes
 *   another way, no box, an empty one, no carrier, a day to come, before it was sold, before the last that happened
 */
export function decideWay(
  facts: WayFacts,
  kind: EventKind,
  days: { on: Day; today: Day },
): Result<true, WayRefusal> {
  const refusal =
    turnRefusal(facts, kind) ?? packingRefusal(facts, kind) ?? dayRefusal(facts, kind, days);
  return refusal ? refuse(refusal) : ok(true);
}

function dayRefusal(
  { events, soldOn }: WayFacts,
  kind: EventKind,
  { on, today }: { on: Day; today: Day },
): WayRefusal | null {
  if (on > today) return { code: 'day_to_come', today };
  if (kind === 'noted') return null;
  if (soldOn && on < soldOn && kind !== 'packed') return { code: 'sent_before_sold', soldOn };
  const last = events.filter((event) => event.kind !== 'noted').at(-1);
  return last && on < last.on ? { code: 'before_it', kind: last.kind, on: last.on } : null;
}

function turnRefusal({ events, how }: WayFacts, kind: EventKind): WayRefusal | null {
  const calledOff = dayOfEvent(events, 'called_off');
  if (calledOff) return { code: 'was_called_off', on: calledOff };
  if (kind === 'noted') return null;
  const already = dayOfEvent(events, kind);
  if (already) return { code: 'happened_already', kind, on: already };
  const stage = stageOf(events);
  if (kind === 'arrived') return stage === 'on_the_way' ? null : { code: 'not_on_the_way', stage };
  if (!isOpen(events)) return { code: 'not_on_the_way', stage };
  const isOtherwise =
    (kind === 'fetched' && how !== 'fetched') || (kind === 'sent' && how === 'fetched');
  return isOtherwise ? { code: 'goes_otherwise', how } : null;
}

function packingRefusal(facts: WayFacts, kind: EventKind): WayRefusal | null {
  if (kind !== 'packed' && kind !== 'sent' && kind !== 'fetched') return null;
  if (facts.boxes === 0) return { code: 'no_boxes_yet' };
  if (facts.emptyBox !== null) return { code: 'box_is_empty', box: facts.emptyBox };
  const isNameless = kind === 'sent' && facts.how === 'carrier' && facts.carrier === '';
  return isNameless ? { code: 'no_carrier_named' } : null;
}
