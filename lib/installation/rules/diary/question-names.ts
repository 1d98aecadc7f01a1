/** What a person may decide before a day is booked, in the order in which it is asked. */
export const bookingQuestions = [
  'before_ready',
  'balance_owed',
  'travel_short',
  'absent',
  'closed',
  'outside_hours',
] as const;

/** One of the {@link bookingQuestions}. */
export type BookingQuestion = (typeof bookingQuestions)[number];

/** What each question is about, as the label of the field in which it is answered. */
export const questionLabels: Readonly<Record<BookingQuestion, string>> = {
  before_ready: 'Before it is sure to be ready: why all the same',
  balance_owed: 'Before the balance is in: why all the same',
  travel_short: 'Too little time for the way: why it can be done',
  absent: 'Somebody is away then: why all the same',
  closed: 'On a day on which all are closed: why all the same',
  outside_hours: 'Outside somebody’s hours: why all the same',
};

/** What was decided, as the page of an appointment heads it. */
export const wordTitles: Readonly<Record<BookingQuestion, string>> = {
  before_ready: 'Before it is sure to be ready',
  balance_owed: 'Before the balance is in',
  travel_short: 'Little time for the way',
  absent: 'Though somebody is away',
  closed: 'On a closed day',
  outside_hours: 'Outside somebody’s hours',
};
