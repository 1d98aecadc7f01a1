/** What an appointment is for. */
export type AppointmentKind = 'hanging' | 'delivery' | 'site_visit' | 'fetching' | 'after_care';

/** The kinds in the order in which a form offers them. */
export const appointmentKinds = [
  'hanging',
  'delivery',
  'site_visit',
  'fetching',
  'after_care',
] as const satisfies readonly AppointmentKind[];

/** A kind in words: `hanging`, `site visit`. */
export const kindWords: Readonly<Record<AppointmentKind, string>> = {
  hanging: 'hanging',
  delivery: 'delivery',
  site_visit: 'site visit',
  fetching: 'fetching',
  after_care: 'after-care visit',
};

/** A kind as it begins a line: `Site visit`. */
export const kindTitles: Readonly<Record<AppointmentKind, string>> = {
  hanging: 'Hanging',
  delivery: 'Delivery',
  site_visit: 'Site visit',
  fetching: 'Fetching',
  after_care: 'After-care visit',
};

/** Whether the finished piece goes with it. */
export function bringsThePiece(kind: AppointmentKind): boolean {
  return kind === 'hanging' || kind === 'delivery' || kind === 'fetching';
}

/** Whether it is still booked for a commission whose piece was handed over. */
export function comesAfterHandOver(kind: AppointmentKind): boolean {
  return kind === 'after_care';
}

/** From an instant until another, which is not in it. */
export type Span = { startsAt: Date; endsAt: Date };

/** Whether two spans share a moment; one that ends as the other starts does not. */
export function overlap(one: Span, other: Span): boolean {
  return one.startsAt < other.endsAt && other.startsAt < one.endsAt;
}
