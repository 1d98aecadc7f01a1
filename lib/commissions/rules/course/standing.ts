import type { Permission, Role } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { finishedPosition, placeName, standingsOf } from '@/lib/studio/rules';
import {
  approvedOf,
  coloursApprovedOn,
  coloursAreApproved,
  depositIsThere,
  depositThereOn,
  mayBegin,
  paidCents,
  type CommissionFacts,
  type JobFact,
  type ShownFact,
} from '@/lib/commissions/rules/facts';
import { areasWithoutYes } from '@/lib/studio/rules/colours';
import type { Where } from './where';
import { nextLetter } from '@/lib/commissions/rules/words';

/** Whose clock is running. */
export type WaitsOn = 'collector' | 'studio' | 'gallery' | 'installer' | 'nobody';

/** Where it stands, whom it waits on, since which day, and who may do the next thing. */
export type Standing = {
  readonly where: Where;
  readonly waitsOn: WaitsOn;
  readonly since: Day;
  /** The permission that the next thing takes; null when there is nothing left to do. */
  readonly permission: Permission | null;
};

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
    const where: Where = { key: 'ended', ...ending };
    return { where, waitsOn: 'nobody', since: ending.endedOn, permission: null };
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

function toAgree(facts: CommissionFacts, today: Day): Standing | null {
  if (facts.agreement) return null;
  const openSketch = unanswered(facts.sketches);
  if (openSketch && !approvedOf(facts.sketches)) return sketch(facts);
  return proposed(facts, today);
}

/** From the first figure to the signature: whoever has to say the next word. */
function proposed(facts: CommissionFacts, today: Day): Standing {
  const accepted = facts.proposals.findLast(({ answer }) => answer?.accepted);
  if (accepted?.answer) {
    return {
      ...ofCollector({ key: 'to_sign' }, accepted.answer.on),
      permission: 'commissions.agree',
    };
  }
  const newest = facts.proposals.at(-1);
  const lastYes = approvedOf(facts.sketches)?.approvedOn ?? null;
  const toPropose = (since: Day) =>
    ofGallery({ key: 'to_propose' }, later(since, lastYes), 'commissions.propose');
  if (!newest) return toPropose(facts.askedOn);
  if (newest.answer) return toPropose(newest.answer.on);
  const { version, validUntilOn, sentOn, writtenOn } = newest;
  if (sentOn === null) {
    return ofGallery({ key: 'proposal_to_send', version }, writtenOn, 'commissions.propose');
  }
  if (validUntilOn < today) {
    const where: Where = { key: 'proposal_ran_out', version, validUntilOn };
    return ofGallery(where, validUntilOn, 'commissions.propose');
  }
  const out = ofCollector({ key: 'proposal_out', version, validUntilOn }, sentOn);
  return { ...out, permission: 'commissions.propose' };
}

function sketch(facts: CommissionFacts): Standing | null {
  if (approvedOf(facts.sketches)) return null;
  const open = unanswered(facts.sketches);
  if (open) return ofCollector({ key: 'sketch_shown', letter: open.label }, open.shownOn);
  const asked = later(facts.askedOn, facts.agreement?.agreedOn ?? null);
  const since = later(asked, facts.sketches.at(-1)?.changesOn ?? null);
  const letter = nextLetter(facts.sketches.length);
  return ofStudio({ key: 'sketch_to_show', letter }, since, 'commissions.write');
}

function colours(facts: CommissionFacts): Standing | null {
  if (coloursAreApproved(facts)) return null;
  const open = facts.colourTiles.filter(
    ({ approvedOn, changesOn }) => approvedOn === null && changesOn === null,
  );
  const toGive = open.find(({ givenOn }) => givenOn === null);
  if (toGive) {
    const where: Where = { key: 'twin_to_give', number: toGive.label };
    return ofGallery(where, toGive.shownOn, 'commissions.write');
  }
  const shown = open.at(-1);
  if (shown) {
    return ofCollector(
      { key: 'colours_shown', number: shown.label },
      later(shown.shownOn, shown.givenOn),
    );
  }
  return coloursToShow(facts);
}

function coloursToShow(facts: CommissionFacts): Standing {
  const approved = facts.colourTiles.filter(({ approvedOn }) => approvedOn !== null);
  const areas = areasWithoutYes(
    approvedOf(facts.sketches)?.areas ?? [],
    approved.map((tile) => tile.areas),
  );
  const days = [
    approvedOf(facts.sketches)?.approvedOn ?? null,
    approvedOf(facts.colourTiles)?.approvedOn ?? null,
    facts.colourTiles.at(-1)?.changesOn ?? null,
  ];
  const agreedOn = facts.agreement?.agreedOn ?? facts.askedOn;
  const since = days.reduce<Day>((last, day) => later(last, day), agreedOn);
  const number = facts.colourTiles.length + 1;
  return ofStudio({ key: 'colours_to_show', number, areas }, since, 'commissions.write');
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
  if (!booked) return ofGallery({ key: 'hanging_to_book' }, readyOn, 'diary.book');
  const { kind, on } = booked;
  if (on <= today) {
    return ofGallery({ key: 'to_hand_over', kind, on }, on, 'commissions.hand_over');
  }
  const where: Where = { key: 'hanging_booked', kind, on };
  return { where, waitsOn: 'installer', since: readyOn, permission: 'diary.see' };
}

function ofCollector(where: Where, since: Day): Standing {
  const takesMoney = where.key === 'deposit_asked' || where.key === 'rest_owed';
  const permission = takesMoney ? 'commissions.take_money' : 'commissions.write';
  return { where, waitsOn: 'collector', since, permission };
}

function ofStudio(where: Where, since: Day, permission: Permission): Standing {
  return { where, waitsOn: 'studio', since, permission };
}

function ofGallery(where: Where, since: Day, permission: Permission): Standing {
  return { where, waitsOn: 'gallery', since, permission };
}

/** The last one shown, while it has no answer. */
function unanswered(shown: readonly ShownFact[]): ShownFact | undefined {
  const last = shown.at(-1);
  return last?.approvedOn === null && last.changesOn === null ? last : undefined;
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

function later(one: Day, other: Day | null): Day {
  return other !== null && other > one ? other : one;
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
