import { notAllowedMessage } from '@/lib/access/rules';
import { formatInstant } from '@/lib/dates/rules';
import { minuteOf, minuteWords } from '@/lib/installation/rules/crew/hours';
import type { BookingRefusal } from './booking';
import type { ChangeRefusal } from './change';
import { kindWords } from './kinds';
import { askedHeadline } from './question-words';
import type { AskRefusal } from './questions';
import type { TimeRefusal } from './when';
import { dayWords, whenWords, type AnyRefusal } from './words';

export type { AnyRefusal };

/** Every reason why nothing happened in the diary. */
export type DiaryRefusal = BookingRefusal | TimeRefusal | ChangeRefusal | AskRefusal | AnyRefusal;

type Code = DiaryRefusal['code'];
type Refusal<Of extends Code> = { [One in Of]: Extract<DiaryRefusal, { code: One }> }[Of];
type Sentence<Of extends Code> = (refusal: Refusal<Of>, zone: string) => string;

const sentences: { [Of in Code]: Sentence<Of> } = {
  not_allowed: (refusal) => notAllowedMessage(refusal),
  key_used_for_something_else: () =>
    'This page was sent before with something else in it. Load it again, please.',
  no_such_commission: () => 'That commission is not in the book.',
  commission_ended: ({ commissionNumber }) =>
    `Commission ${commissionNumber} has ended, so nothing is booked for it.`,
  handed_over_already: ({ commissionNumber }) =>
    `Commission ${commissionNumber} was handed over already. ` +
    'An after-care visit can be booked for it; anything else goes without the commission.',
  lead_does_not_work_here: () => 'Choose somebody who works here to lead it.',
  crew_does_not_work_here: () => 'Choose people who work here to go along.',
  ends_before_it_starts: () => 'It would end before it starts. Look at the two times again.',
  time_skipped: ({ on, time, skippedFrom, skippedUntil }) =>
    `There is no ${spoken(time)} on ${dayWords(on)}: the clocks go from ${spoken(skippedFrom)} ` +
    `straight to ${spoken(skippedUntil)}. Choose a time before or after.`,
  in_the_past: () => 'That time has passed. Choose one that is still to come.',
  wall_not_known: ({ commissionNumber }) =>
    `Nobody knows yet what the wall of commission ${commissionNumber} is made of, so no hanging ` +
    'is booked. Look at the wall and write down what it is, then come back; a site visit can be ' +
    'booked meanwhile.',
  adhesive_cures: ({ curesAt }, zone) =>
    `The adhesive cures until ${formatInstant(curesAt, zone)}. Nothing hangs before that; choose a ` +
    'later time.',
  is_elsewhere: ({ name, other }, zone) =>
    `${name} is elsewhere then: the ${kindWords[other.kind]} ${other.forWhat}, ` +
    `${whenWords(other, zone)}. Choose another time, or somebody else.`,
  asks: (refusal) => askedHeadline(refusal),
  no_such_appointment: () => 'That appointment is not in the diary.',
  called_off_already: () => 'It was called off already.',
  over_already: () => 'It is over, so it stays as it was.',
  changed_meanwhile: () => 'Somebody changed it while you were looking. Here is how it stands now.',
};

/** Says why nothing was booked, moved or called off, in the gallery's own time. */
export function diaryRefusalMessage(refusal: DiaryRefusal, zone: string): string {
  return say(refusal, zone);
}

function say<Of extends Code>(refusal: Refusal<Of>, zone: string): string {
  const sentence: Sentence<Of> = sentences[refusal.code];
  return sentence(refusal, zone);
}

const refusedFields = {
  no_such_commission: 'commissionId',
  commission_ended: 'commissionId',
  handed_over_already: 'commissionId',
  wall_not_known: 'commissionId',
  lead_does_not_work_here: 'leadId',
  crew_does_not_work_here: 'crewIds',
  is_elsewhere: 'leadId',
  ends_before_it_starts: 'to',
  time_skipped: 'from',
  in_the_past: 'day',
  adhesive_cures: 'day',
} as const satisfies Partial<Record<DiaryRefusal['code'], string>>;

/** The fields of the booking form at which a refusal may be told. */
export type RefusedField = (typeof refusedFields)[keyof typeof refusedFields];

/** The field of the booking form at which a refusal is told; null when it is about the whole. */
export function refusedField(refusal: DiaryRefusal): RefusedField | null {
  return isOfAField(refusal.code) ? refusedFields[refusal.code] : null;
}

function isOfAField(code: string): code is keyof typeof refusedFields {
  return code in refusedFields;
}

function spoken(time: string): string {
  return minuteWords(minuteOf(time));
}
