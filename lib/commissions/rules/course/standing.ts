import type { Role } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { finishedPosition, placeName, standingsOf } from '@/lib/studio/rules';
import {
  approvedOf,
  coloursApprovedOn,
  depositIsThere,
  depositThereOn,
  mayBegin,
  paidCents,
  type CommissionFacts,
  type JobFact,
} from '@/lib/commissions/rules/facts';
import { colours, sketch, toAgree } from './before-clay';
import { later, ofCollector, ofGallery, ofStudio, type Standing, type WaitsOn } from './turns';
import type { Where } from './where';

export type { Standing, WaitsOn } from './turns';

/**
 * Where a commission stands, worked out from what is approved, paid, made, booked and signed.
 * Nobody types it.
 *
 * Before the clay the order is proposal, agreement, sketch, colours, deposit; what was shown and has no
 * answer yet is the collector's to answer, even before anything is agreed.
 *
 * @param today the day in the gallery's own zone: it says whether a hanging is still to come
 * @example standing(facts of a sketch shown on 12 May, '2026-05-20').since // '2026-05-12'
 */
export function standing(facts: CommissionFacts, today: Day): Standing {
  return (
    afterTheEnd(facts) ??
    beforeTheClay(facts, today) ??
    making(facts, today) ??
    leaving(facts, today)
  );
}

function afterTheEnd(facts: CommissionFacts): Standing | null {
  const { ending, handOver } = facts;
  if (ending) {
    const { endedOn, why } = ending;
    const where: Where = { key: 'ended', endedOn, why };
    return { where, waitsOn: 'nobody', since: endedOn, permission: null };
  }
  if (!handOver) return null;
  const { handedOn, totalCents } = handOver;
  const leftCents = totalCents - paidCents(facts);
  if (leftCents > 0n) {
    return ofCollector({ key: 'rest_owed', handedOn, leftCents }, handedOn);
  }
  const where: Where = { key: 'handed_over', handedOn };
  return { where, waitsOn: 'nobody', since: handedOn, permission: null };
}

function beforeTheClay(facts: CommissionFacts, today: Day): Standing | null {
  if (hasBegun(facts) || mayBegin(facts, today).may) return null;
  return (
    toAgree(facts, today) ??
    sketch(facts) ??
    colours(facts) ??
    deposit(facts) ??
    daysToCancel(facts, today)
  );
}

/** Nobody's clock: the law gives the collector these days. */
function daysToCancel({ agreement }: CommissionFacts, today: Day): Standing | null {
  if (!agreement?.clayFromOn || agreement.clayFromOn <= today) return null;
  const where: Where = { key: 'days_to_cancel', clayFromOn: agreement.clayFromOn };
  return { where, waitsOn: 'nobody', since: agreement.agreedOn, permission: null };
}

function deposit(facts: CommissionFacts): Standing | null {
  const { agreement, asked } = facts;
  if (!agreement || depositIsThere(facts)) return null;
  const leftCents = agreement.depositCents - paidCents(facts);
  const lastAsked = asked.at(-1);
  if (lastAsked) {
    return ofCollector(
      { key: 'deposit_asked', leftCents },
      later(agreement.agreedOn, lastAsked.askedOn),
    );
  }
  const where: Where = { key: 'deposit_to_ask', leftCents };
  return ofGallery(where, agreement.agreedOn, 'commissions.take_money');
}

function making(facts: CommissionFacts, today: Day): Standing | null {
  if (facts.jobs.length === 0) {
    return ofStudio({ key: 'job_to_open' }, mayBeginSince(facts, today), 'commissions.write');
  }
  const job = facts.jobs.find((each) => !isFinished(each));
  if (!job) return null;
  const behind = standingsOf(job, job.moves).find((each) => each.position > 0);
  if (!behind || behind.position === finishedPosition(job)) {
    const since = later(job.openedOn, mayBeginSince(facts, today));
    return ofStudio({ key: 'clay_to_begin', jobNumber: job.number }, since, 'studio.move');
  }
  const where: Where = {
    key: 'in_the_studio',
    jobNumber: job.number,
    pieces: behind.pieces,
    ofPieces: job.pieces,
    at: placeName(job, behind.position),
  };
  return ofStudio(where, behind.sinceOn ?? job.openedOn, 'studio.move');
}

function leaving(facts: CommissionFacts, today: Day): Standing {
  const readyOn = finishedOn(facts);
  if (!facts.agreement) return ofGallery({ key: 'to_agree' }, readyOn, 'commissions.agree');
  const booked = facts.appointments.reduce<CommissionFacts['appointments'][number] | null>(
    (last, each) => (last === null || each.on >= last.on ? each : last),
    null,
  );
  if (!booked && !facts.isWallKnown) {
    return ofGallery({ key: 'wall_to_look_at' }, readyOn, 'installation.do');
  }
  if (!booked) return ofGallery({ key: 'hanging_to_book' }, readyOn, 'diary.book');
  const { kind, on } = booked;
  if (on <= today) {
    return ofGallery({ key: 'to_hand_over', kind, on }, on, 'commissions.hand_over');
  }
  const where: Where = { key: 'hanging_booked', kind, on };
  return { where, waitsOn: 'installer', since: readyOn, permission: 'diary.see' };
}

function mayBeginSince(facts: CommissionFacts, today: Day): Day {
  if (mayBegin(facts, today).byOverride && facts.override) return facts.override.on;
  const days = [
    facts.agreement?.agreedOn ?? null,
    approvedOf(facts.sketches)?.approvedOn ?? null,
    coloursApprovedOn(facts),
    depositThereOn(facts),
  ];
  return days.reduce<Day>((last, day) => later(last, day), facts.askedOn);
}

/** Whether any piece of any job has left "not begun". */
export function hasBegun(facts: Pick<CommissionFacts, 'jobs'>): boolean {
  return facts.jobs.some((job) => standingsOf(job, job.moves).some((each) => each.position > 0));
}

/** Whether every piece of a job is through its whole route. */
export function isFinished(job: JobFact): boolean {
  return standingsOf(job, job.moves).every((each) => each.position === finishedPosition(job));
}

/** The day of the last move of any job; the day of the request before there is one. */
export function finishedOn(facts: CommissionFacts): Day {
  const moved = facts.jobs.flatMap((job) => job.moves.map((move) => move.movedOn));
  return moved.reduce<Day>((last, day) => later(last, day), facts.askedOn);
}

/**
 * In which order the list tells whom commissions wait on: one's own first.
 *
 * @example groupOrder(['maker'])[0] // 'studio'
 */
export function groupOrder(roles: readonly Role[]): readonly WaitsOn[] {
  const isOnlyMaker = roles.every((role) => role === 'maker');
  return isOnlyMaker
    ? ['studio', 'collector', 'gallery', 'installer', 'nobody']
    : ['gallery', 'collector', 'studio', 'installer', 'nobody'];
}
