import { timeWords } from '@/lib/dates/rules/time-of-day';
import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { dayOf, formatDay, type Day } from '@/lib/dates/rules';
import {
  kindWords,
  type AppointmentKind,
  type BookingRefusal,
  type ChangeRefusal,
  type Span,
} from '@/lib/installation/rules';

/** Why nothing happened, whatever it was: no leave, or a form that was sent before. */
export type AnyRefusal = NotAllowed | { code: 'key_used_for_something_else' };

/** A kind as it begins a line: `Site visit`. */
export const kindTitles: Readonly<Record<AppointmentKind, string>> = {
  hanging: 'Hanging',
  delivery: 'Delivery',
  site_visit: 'Site visit',
  fetching: 'Fetching',
  after_care: 'After-care visit',
};

/** Every reason why nothing happened in the diary. */
export type DiaryRefusal = BookingRefusal | ChangeRefusal | AnyRefusal;

/** Two times of day in a zone: `9:30 am to 12:00 pm`. */
export function hoursWords(span: Span, zone: string): string {
  return `${timeWords(span.startsAt, zone)} to ${timeWords(span.endsAt, zone)}`;
}

/** A day without its year, as one says it in the same season: `Friday 27 November`. */
export function dayWords(day: Day): string {
  return formatDay(day, 'long').replace(/ \d{4}$/, '');
}

/** What is said after booking: `Hanging booked for Friday 27 November, 9:00 am to 12:00 pm.` */
export function bookedWords(kind: AppointmentKind, span: Span, zone: string): string {
  return `${kindTitles[kind]} booked for ${whenWords(span, zone)}.`;
}

/** What is said after moving: `The hanging is now on Friday 27 November, 9:00 am to 12:00 pm.` */
export function movedWords(kind: AppointmentKind, span: Span, zone: string): string {
  return `The ${kindWords[kind]} is now on ${whenWords(span, zone)}.`;
}

/** A day and its hours: `Friday 27 November, 9:00 am to 12:00 pm`. */
export function whenWords(span: Span, zone: string): string {
  return `${dayWords(dayOf(span.startsAt, zone))}, ${hoursWords(span, zone)}`;
}

/** Says why nothing was booked, moved or called off, in the gallery's own time. */
export function diaryRefusalMessage(refusal: DiaryRefusal, zone: string): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'key_used_for_something_else') {
    return 'This page was sent before with something else in it. Load it again, please.';
  }
  return isOfAChange(refusal)
    ? changeRefusalMessage(refusal)
    : bookingRefusalMessage(refusal, zone);
}

const refusedFields: Readonly<Record<string, 'commissionId' | 'leadId' | 'to' | 'day'>> = {
  no_such_commission: 'commissionId',
  commission_ended: 'commissionId',
  handed_over_already: 'commissionId',
  lead_does_not_work_here: 'leadId',
  lead_is_elsewhere: 'leadId',
  ends_before_it_starts: 'to',
  in_the_past: 'day',
};

/** The field of the booking form at which a refusal is told; null when it is about the whole. */
export function refusedField(
  refusal: DiaryRefusal,
): 'commissionId' | 'leadId' | 'to' | 'day' | null {
  return refusedFields[refusal.code] ?? null;
}

/** Says why nothing was booked, in the gallery's own time. */
export function bookingRefusalMessage(refusal: BookingRefusal, zone: string): string {
  switch (refusal.code) {
    case 'no_such_commission':
      return 'That commission is not in the book.';
    case 'commission_ended':
      return `Commission ${refusal.commissionNumber} has ended, so nothing is booked for it.`;
    case 'handed_over_already':
      return (
        `Commission ${refusal.commissionNumber} was handed over already. ` +
        'Book what is still to do without the commission.'
      );
    case 'lead_does_not_work_here':
      return 'Choose somebody who works here to lead it.';
    case 'ends_before_it_starts':
      return 'It would end before it starts. Look at the two times again.';
    case 'in_the_past':
      return 'That time has passed. Choose one that is still to come.';
    case 'lead_is_elsewhere': {
      const { leadName, other } = refusal;
      const what = `the ${kindWords[other.kind]} ${other.forWhat}`;
      return (
        `${leadName} is elsewhere then: ${what}, ${whenWords(other, zone)}. ` +
        'Choose another time, or somebody else to lead it.'
      );
    }
  }
}

const changeWords: Readonly<Record<ChangeRefusal['code'], string>> = {
  no_such_appointment: 'That appointment is not in the diary.',
  called_off_already: 'It was called off already.',
  over_already: 'It is over, so it stays as it was.',
  changed_meanwhile: 'Somebody changed it while you were looking. Here is how it stands now.',
};

/** Says why an appointment was not changed. */
export function changeRefusalMessage(refusal: ChangeRefusal): string {
  return changeWords[refusal.code];
}

function isOfAChange(refusal: BookingRefusal | ChangeRefusal): refusal is ChangeRefusal {
  return refusal.code in changeWords;
}

/** What an appointment is, with whose it is: `Hanging of Herons at low water`. */
export function titleWords(
  kind: AppointmentKind,
  commissionTitle: string | null,
  address: string,
): string {
  const what = kindTitles[kind];
  if (!commissionTitle) return `${what}, ${address}`;
  return `${what} ${kind === 'site_visit' ? 'for' : 'of'} ${commissionTitle}`;
}
