import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import { standingsOf } from '@/lib/studio/rules';
import {
  clocks,
  type Clock,
  type CommissionFacts,
  type JobFact,
} from '@/lib/commissions/rules/facts';
import { standing } from './standing';

/** Days that ran on one clock: from a day up to, and without, another. */
export type ClockSpan = { clock: Clock; fromOn: Day; toOn: Day; days: number };

/** Each clock as one says it. */
export const clockWords: Readonly<Record<Clock, string>> = {
  collector: 'the collector',
  gallery: 'the gallery',
  studio: 'the studio',
  clay: 'the clay',
  kiln: 'the kiln',
  installer: 'whoever hangs it',
  building: 'the building',
};

/**
 * On whose clock the days of a commission ran, from the request to its end, or to today: each day
 * belongs to whoever it stood with by what was written down for that day or before.
 *
 * While pieces dry it is the clay's clock, while they wait for a kiln or are in it the kiln's. A
 * booked hanging counts for whoever hangs it from the day the piece was finished.
 *
 * @returns spans in order, without gaps, none twice; they add up to the days between
 * @example asked on the 1st, proposed on the 3rd, today the 6th // gallery 2 days, collector 3 days
 */
export function clockSpans(facts: CommissionFacts, today: Day): ClockSpan[] {
  const endOn = facts.handOver?.handedOn ?? facts.ending?.endedOn ?? today;
  const spans: ClockSpan[] = [];
  for (let day = facts.askedOn; day < endOn; day = addDays(day, 1)) {
    const clock = clockOn(facts, day);
    const last = spans.at(-1);
    if (last?.clock === clock) {
      last.toOn = addDays(day, 1);
      last.days += 1;
    } else spans.push({ clock, fromOn: day, toOn: addDays(day, 1), days: 1 });
  }
  return spans;
}

/** The days of each clock; clocks without any are left out. */
export function daysByClock(spans: readonly ClockSpan[]): { clock: Clock; days: number }[] {
  return clocks
    .map((clock) => ({ clock, days: sum(spans.filter((span) => span.clock === clock)) }))
    .filter(({ days }) => days > 0);
}

/**
 * The days that were lost, by whose clock: what the notices of delay moved, and what answers took
 * beyond the days agreed for them.
 *
 * @param answerDays how many days an answer may take, by the terms
 * @example an answer of 14 days where 10 were agreed // collector: 4
 */
export function daysLost(
  facts: Pick<CommissionFacts, 'delays'>,
  spans: readonly ClockSpan[],
  answerDays: number,
): { clock: Clock; days: number }[] {
  const lost = new Map<Clock, number>();
  const add = (clock: Clock, days: number) => {
    if (days > 0) lost.set(clock, (lost.get(clock) ?? 0) + days);
  };
  for (const { clock, fromOn, toOn } of facts.delays) add(clock, daysBetween(fromOn, toOn));
  for (const { clock, days } of spans) if (clock === 'collector') add(clock, days - answerDays);
  return clocks.flatMap((clock) => {
    const days = lost.get(clock);
    return days === undefined ? [] : [{ clock, days }];
  });
}

function sum(spans: readonly ClockSpan[]): number {
  return spans.reduce((days, span) => days + span.days, 0);
}

function clockOn(facts: CommissionFacts, day: Day): Clock {
  const then = factsOn(facts, day);
  const { where, waitsOn } = standing(then, day);
  if (where.key === 'in_the_studio') return clockOfMaking(then);
  // The days in which it can still be cancelled are the collector's.
  return waitsOn === 'nobody' ? 'collector' : waitsOn;
}

function clockOfMaking({ jobs }: CommissionFacts): Clock {
  for (const job of jobs) {
    const behind = standingsOf(job, job.moves).find((each) => each.position > 0);
    const step = job.steps[(behind?.position ?? 0) - 1];
    if (step?.peg === 'dry') return 'clay';
    if (step?.peg === 'bisque' || /\bkiln\b|\bfiring\b/.test(step?.name ?? '')) return 'kiln';
    if (step) return 'studio';
  }
  return 'studio';
}

/** What was known on the evening of a day; what has no day of its own counts from the beginning. */
function factsOn(facts: CommissionFacts, day: Day): CommissionFacts {
  const known = (on: Day | null) => (on !== null && on <= day ? on : null);
  const shown = <Shown extends CommissionFacts['sketches'][number]>(all: readonly Shown[]) =>
    all
      .filter(({ shownOn }) => shownOn <= day)
      .map((each) => ({
        ...each,
        approvedOn: known(each.approvedOn),
        changesOn: known(each.changesOn),
      }));
  const { agreement, override, proposals, changeOrders } = facts;
  return {
    ...facts,
    agreement: agreement && agreement.agreedOn <= day ? agreement : null,
    override: override && override.on <= day ? override : null,
    sketches: shown(facts.sketches),
    colourTiles: shown(facts.colourTiles).map((tile) => ({
      ...tile,
      givenOn: known(tile.givenOn),
    })),
    proposals: proposals
      .filter(({ writtenOn }) => writtenOn <= day)
      .map((each) => ({
        ...each,
        sentOn: known(each.sentOn),
        answer: each.answer && each.answer.on <= day ? each.answer : null,
      })),
    changeOrders: changeOrders
      .filter(({ offeredOn }) => offeredOn <= day)
      .map((each) => ({ ...each, signedOn: known(each.signedOn) })),
    asked: facts.asked.filter(({ askedOn }) => askedOn <= day),
    payments: facts.payments.filter(({ receivedOn }) => receivedOn <= day),
    refunds: facts.refunds.filter(({ refundedOn }) => refundedOn <= day),
    jobs: facts.jobs.filter(({ openedOn }) => openedOn <= day).map((job) => jobOn(job, day)),
    handOver: null,
    ending: null,
  };
}

/** Moves up to the first of a later day: what follows rests on those before it. */
function jobOn(job: JobFact, day: Day): JobFact {
  const later = job.moves.findIndex((move) => move.movedOn > day);
  return later === -1 ? job : { ...job, moves: job.moves.slice(0, later) };
}
