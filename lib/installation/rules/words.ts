import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { dayOf, formatDay, formatInstant, type Day } from '@/lib/dates/rules';
import {
  kindWords,
  type AppointmentKind,
  type BookingRefusal,
  type ChangeRefusal,
  type Span,
} from '@/lib/installation/rules';

/** Why nothing happened, whatever it was: no leave, or a form that was sent before. */
export type AnyRefusal = NotAllowed | { code: 'key_used_for_something_else' };

/** A time of day in a zone: `9:30 am`. */
export function timeWords(instant: Date, zone: string): string {
  return formatInstant(instant, zone).split(', ')[1] ?? '';
}

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
  return `${capital(kindWords[kind])} booked for ${whenWords(span, zone)}.`;
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
export function diaryRefusalMessage(
  refusal: BookingRefusal | ChangeRefusal | AnyRefusal,
  zone: string,
): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'no_such_appointment':
    case 'called_off_already':
    case 'over_already':
    case 'changed_meanwhile':
      return changeRefusalMessage(refusal);
    case 'no_such_commission':
    case 'commission_ended':
    case 'handed_over_already':
    case 'lead_does_not_work_here':
    case 'ends_before_it_starts':
    case 'in_the_past':
    case 'lead_is_elsewhere':
      return bookingRefusalMessage(refusal, zone);
  }
}

/** The field of the booking form at which a refusal is told. */
export function refusedField(code: BookingRefusal['code']): string {
  switch (code) {
    case 'no_such_commission':
    case 'commission_ended':
    case 'handed_over_already':
      return 'commissionId';
    case 'lead_does_not_work_here':
    case 'lead_is_elsewhere':
      return 'leadId';
    case 'ends_before_it_starts':
      return 'to';
    case 'in_the_past':
      return 'day';
  }
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

/** Says why an appointment was not changed. */
export function changeRefusalMessage(refusal: ChangeRefusal): string {
  switch (refusal.code) {
    case 'no_such_appointment':
      return 'That appointment is not in the diary.';
    case 'called_off_already':
      return 'It was called off already.';
    case 'over_already':
      return 'It is over, so it stays as it was.';
    case 'changed_meanwhile':
      return 'Somebody changed it while you were looking. Here is how it stands now.';
  }
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
