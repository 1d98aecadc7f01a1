import { addDays, type Day } from '@/lib/dates/rules';

/** What else a gallery has on a day, beside its appointments. */
export type OtherKind = 'kiln' | 'hold' | 'fair' | 'after_care' | 'promised';

/** One line of it: where it is kept, and on which days it stands; both are included. */
export type OtherLine = {
  readonly kind: OtherKind;
  readonly key: string;
  readonly fromOn: Day;
  readonly untilOn: Day;
  readonly words: string;
  readonly href: string;
};

/** What each kind is called, for those who listen to the page. */
export const otherNames: Readonly<Record<OtherKind, string>> = {
  kiln: 'Kiln',
  hold: 'Hold',
  fair: 'Fair',
  after_care: 'After-care',
  promised: 'Promised',
};

/** The lines that stand on a day, in the order in which they are given. */
export function othersOn(lines: readonly OtherLine[], day: Day): OtherLine[] {
  return lines.filter(({ fromOn, untilOn }) => fromOn <= day && day <= untilOn);
}

/**
 * The day on which a lit kiln is commonly cool enough to open: two days after.
 *
 * @source common practice
 */
export function opensAbout(litOn: Day): Day {
  return addDays(litOn, 2);
}
