import { dayOf, weekdayOf, type Day } from '@/lib/dates/rules';
import {
  absentOn,
  closedWeekday,
  hoursOn,
  isInside,
  type AbsentSpan,
  type Hours,
  type WorkDay,
} from '@/lib/installation/rules/crew/hours';
import { wayMinutes, type PlaceToGo, type Ways } from '@/lib/installation/rules/crew/ways';
import type { Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { AppointmentKind, Span } from './kinds';
import { bookingQuestions, type BookingQuestion } from './question-names';

export { bookingQuestions, type BookingQuestion };

/** Another appointment of somebody who goes along, just before or just after. */
export type Neighbour = Span & PlaceToGo & { readonly kind: AppointmentKind };

/** Somebody who goes along: their hours, their absences, and what stands around it in the diary. */
export type Goes = {
  readonly staffId: string;
  readonly name: string;
  readonly workDays: readonly WorkDay[];
  readonly absences: readonly AbsentSpan[];
  readonly neighbours: readonly Neighbour[];
};

/** When the studio has it ready in so many of 100; `readyOn` null when nobody can say. */
export type ReadyBy = { readonly readyOn: Day | null; readonly inHundred: number };

/** What has to be known before it is asked whether a day should be booked all the same. */
export type AskFacts = {
  readonly zone: string;
  readonly place: PlaceToGo;
  /** Null when the piece is ready, or none goes along. */
  readonly ready: ReadyBy | null;
  /** What the agreement wants before the piece is handed over and is not in. */
  readonly owedCents: Cents;
  readonly crew: readonly Goes[];
  readonly ways: Ways;
  /** Days on which the whole studio stands still. */
  readonly closed: readonly AbsentSpan[];
};

/** Something that is asked, with what explains it. */
export type Question =
  | ({ about: 'before_ready' } & ReadyBy)
  | { about: 'balance_owed'; owedCents: Cents }
  | {
      about: 'travel_short';
      name: string;
      neighbour: Neighbour;
      isBefore: boolean;
      needMinutes: number;
      haveMinutes: number;
    }
  | { about: 'absent'; name: string; absence: AbsentSpan }
  | { about: 'closed'; on: Day; why: string }
  | { about: 'outside_hours'; name: string; hours: Hours | null; leavesAt: Date; backAt: Date };

/** Somebody's word on a question. */
export type Word = { about: BookingQuestion; why: string };

/** The words that came with the form, by what they are about. */
export type Words = Readonly<Partial<Record<BookingQuestion, string>>>;

/** The day is not booked before these are decided. */
export type AskRefusal = { code: 'asks'; questions: readonly Question[]; ownerAlone: boolean };

const minuteMs = 60_000;

/**
 * What is to be decided by a person before a day is booked: one line for each thing that is not as
 * it should be, in the order of {@link bookingQuestions}.
 *
 * The way there and back counts to somebody's hours, but for the side on which they have something
 * else that day.
 */
export function findQuestions(facts: AskFacts, span: Span): Question[] {
  const { ready, owedCents, zone, crew } = facts;
  const on = dayOf(span.startsAt, zone);
  const found: Question[] = [];
  if (ready && (ready.readyOn === null || on < ready.readyOn)) {
    found.push({ about: 'before_ready', ...ready });
  }
  if (owedCents > 0n) found.push({ about: 'balance_owed', owedCents });
  found.push(...crew.flatMap((goes) => shortWays(facts, goes, span)));
  const here = crew.filter(({ absences }) => absentOn(absences, on) === undefined);
  for (const { name, absences } of crew) {
    const absence = absentOn(absences, on);
    if (absence) found.push({ about: 'absent', name, absence });
  }
  const closed = closedOn(facts, on);
  if (closed) found.push(closed);
  // Whoever has no hours of their own is not asked once more on a day on which all are away.
  const asked = here.filter(({ workDays }) => !closed || workDays.length > 0);
  found.push(...asked.flatMap((goes) => outsideHours(facts, goes, span)));
  return found;
}

function shortWays({ place, ways }: AskFacts, goes: Goes, span: Span): Question[] {
  return goes.neighbours.flatMap((neighbour): Question[] => {
    const isBefore = neighbour.endsAt <= span.startsAt;
    const gapMs = isBefore
      ? span.startsAt.getTime() - neighbour.endsAt.getTime()
      : neighbour.startsAt.getTime() - span.endsAt.getTime();
    const [needMinutes, haveMinutes] = [wayMinutes(place, neighbour, ways), gapMs / minuteMs];
    if (haveMinutes >= needMinutes) return [];
    const { name } = goes;
    return [{ about: 'travel_short', name, neighbour, isBefore, needMinutes, haveMinutes }];
  });
}

function closedOn({ closed }: AskFacts, on: Day): Question | null {
  const span = absentOn(closed, on);
  if (span) return { about: 'closed', on, why: span.why };
  return weekdayOf(on) === closedWeekday ? { about: 'closed', on, why: '' } : null;
}

function outsideHours({ place, zone }: AskFacts, goes: Goes, span: Span): Question[] {
  const on = dayOf(span.startsAt, zone);
  const hours = hoursOn(goes.workDays, on);
  const { leavesAt, backAt } = awayFor(goes, span, place, zone);
  if (isInside(hours, { fromAt: leavesAt, untilAt: backAt, zone })) return [];
  return [{ about: 'outside_hours', name: goes.name, hours, leavesAt, backAt }];
}

function awayFor({ neighbours }: Goes, span: Span, place: PlaceToGo, zone: string) {
  const on = dayOf(span.startsAt, zone);
  const sameDay = neighbours.filter((one) => dayOf(one.startsAt, zone) === on);
  const wayMs = place.travelMinutes * minuteMs;
  const comesFromElsewhere = sameDay.some((one) => one.endsAt <= span.startsAt);
  const goesOn = sameDay.some((one) => one.startsAt >= span.endsAt);
  return {
    leavesAt: comesFromElsewhere ? span.startsAt : new Date(span.startsAt.getTime() - wayMs),
    backAt: goesOn ? span.endsAt : new Date(span.endsAt.getTime() + wayMs),
  };
}

/**
 * Decides whether everything that is asked was answered.
 *
 * @param words what the form says; a word on something that is not asked is left out
 * @param mayBeforePaid whether this person may say that it goes before the balance is in
 * @returns refuses `asks` with all questions while one has no word; `ownerAlone` where the balance
 *   is owed and the person may not say
 */
export function decideQuestions(
  questions: readonly Question[],
  words: Words,
  mayBeforePaid: boolean,
): Result<Word[], AskRefusal> {
  const asked = bookingQuestions.filter((about) => questions.some((one) => one.about === about));
  const ownerAlone = asked.includes('balance_owed') && !mayBeforePaid;
  const given = asked.flatMap((about) => {
    const why = words[about]?.trim() ?? '';
    return why === '' ? [] : [{ about, why }];
  });
  if (ownerAlone || given.length < asked.length) {
    return refuse({ code: 'asks', questions, ownerAlone });
  }
  return ok(given);
}
