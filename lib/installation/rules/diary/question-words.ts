import { formatDay } from '@/lib/dates/rules';
import { timeWords } from '@/lib/dates/rules/time-of-day';
import { lastsWords, minuteWords } from '@/lib/installation/rules/crew/hours';
import { formatCents } from '@/lib/money/rules';
import { kindWords } from './kinds';
import { bookingQuestions, type BookingQuestion } from './question-names';
import type { AskRefusal, Question } from './questions';
import { dayWords } from './words';

/** How things are said to somebody: in which zone, and whether they see money. */
export type SaidTo = { readonly zone: string; readonly seesMoney: boolean };

/** What is said at the head of the form when something is asked. */
export function askedHeadline({ questions, ownerAlone }: Omit<AskRefusal, 'code'>): string {
  const things = new Set(questions.map(({ about }) => about)).size;
  const owner = ownerAlone
    ? ' The agreement asks for money first: only the owner can book it before that is in.'
    : '';
  const what = things === 1 ? 'One thing is' : `${things} things are`;
  return `${what} not as it should be. Choose another time, or say below why it goes all the same.${owner}`;
}

/** The sentences of what is asked, by what they are about; one line for each person or place. */
export function questionSentences(
  questions: readonly Question[],
  to: SaidTo,
): Partial<Record<BookingQuestion, string>> {
  const said: Partial<Record<BookingQuestion, string>> = {};
  for (const about of bookingQuestions) {
    const own = questions.filter((one) => one.about === about);
    if (own.length > 0) said[about] = own.map((one) => questionSentence(one, to)).join(' ');
  }
  return said;
}

/** What is not as it should be, in a full sentence. */
export function questionSentence(question: Question, { zone, seesMoney }: SaidTo): string {
  switch (question.about) {
    case 'before_ready':
      return question.readyOn === null
        ? 'Nobody can say yet when it is ready: it is not in the studio, or something is missing there.'
        : `The studio has it ready by ${formatDay(question.readyOn, 'long')} in ` +
            `${question.inHundred} of 100; this is before.`;
    case 'balance_owed':
      return seesMoney
        ? `The agreement asks for ${formatCents(question.owedCents)} before it is handed over, and that is not in.`
        : 'What the agreement asks for before it is handed over is not all in.';
    case 'travel_short':
      return shortWayWords(question, zone);
    case 'absent': {
      const { name, absence } = question;
      const until = absence.toOn === absence.fromOn ? '' : ` until ${dayWords(absence.toOn)}`;
      const why = absence.why === '' ? '' : ` (${absence.why})`;
      return `${name} is away from ${dayWords(absence.fromOn)}${until}${why}.`;
    }
    case 'closed':
      return `The gallery is closed on ${dayWords(question.on)}${question.why === '' ? '' : `: ${question.why}`}.`;
    case 'outside_hours':
      return outsideWords(question, zone);
  }
}

function shortWayWords(question: Extract<Question, { about: 'travel_short' }>, zone: string) {
  const { name, neighbour, isBefore, needMinutes, haveMinutes } = question;
  const other = `the ${kindWords[neighbour.kind]} at ${neighbour.address}`;
  const when = isBefore
    ? `comes from ${other}, which ends at ${timeWords(neighbour.endsAt, zone)}`
    : `goes on to ${other}, which begins at ${timeWords(neighbour.startsAt, zone)}`;
  return `${name} ${when}: the way takes ${lastsWords(needMinutes)}, and there are ${lastsWords(haveMinutes)}.`;
}

function outsideWords(question: Extract<Question, { about: 'outside_hours' }>, zone: string) {
  const { name, hours, leavesAt, backAt } = question;
  if (!hours) return `${name} does not work on that day.`;
  return (
    `${name} works from ${minuteWords(hours.fromMinute)} to ${minuteWords(hours.toMinute)}; with ` +
    `the way this lasts from ${timeWords(leavesAt, zone)} to ${timeWords(backAt, zone)}.`
  );
}
