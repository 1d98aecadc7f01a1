import type { Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { dayOfEvent, stageOf, type Happened } from './way';
import type { Stage } from './words';

/** What may come of a claim. */
export type ClaimEventKind = 'told' | 'claimed' | 'paid' | 'refused' | 'withdrawn' | 'noted';

/** What came of a claim on a day. */
export type ClaimHappened = { readonly kind: ClaimEventKind; readonly on: Day };

/** What came of it, as the history tells it. */
export const claimEventWords: Readonly<Record<ClaimEventKind, string>> = {
  told: 'the carrier was told',
  claimed: 'it was claimed, with everything asked for',
  paid: 'it was paid',
  refused: 'it was refused',
  withdrawn: 'it was withdrawn',
  noted: 'noted',
};

/** Where a claim stands. */
export type ClaimStage = 'to_tell' | 'to_claim' | 'waiting' | 'paid' | 'refused' | 'withdrawn';

/** Where a claim stands, in words. */
export const claimStageWords: Readonly<Record<ClaimStage, string>> = {
  to_tell: 'the carrier is to be told',
  to_claim: 'to be claimed',
  waiting: 'waiting for the carrier',
  paid: 'paid',
  refused: 'refused',
  withdrawn: 'withdrawn',
};

/** Where a claim stands, by what came of it. */
export function claimStageOf(events: readonly Pick<ClaimHappened, 'kind'>[]): ClaimStage {
  const has = (kind: ClaimEventKind) => events.some((event) => event.kind === kind);
  if (has('paid')) return 'paid';
  if (has('withdrawn')) return 'withdrawn';
  if (has('refused')) return 'refused';
  if (has('claimed')) return 'waiting';
  return has('told') ? 'to_claim' : 'to_tell';
}

/** Whether something is still to be done about a claim. */
export function isClaimOpen(events: readonly Pick<ClaimHappened, 'kind'>[]): boolean {
  return ['to_tell', 'to_claim', 'waiting'].includes(claimStageOf(events));
}

/** Why a claim was not written down, or not changed. */
export type ClaimRefusal =
  | { code: 'no_such_claim' }
  | { code: 'not_sent_yet'; stage: Stage }
  | { code: 'found_before_sent'; sentOn: Day }
  | { code: 'claim_day_to_come'; today: Day }
  | { code: 'claim_is_closed'; stage: ClaimStage }
  | { code: 'came_of_it_already'; kind: ClaimEventKind; on: Day }
  | { code: 'not_told_yet' }
  | { code: 'not_claimed_yet' }
  | { code: 'before_found'; foundOn: Day }
  | { code: 'paid_nothing' }
  | { code: 'amount_for_nothing' };

/**
 * Decides whether damage can be written down.
 *
 * @returns refuses, in this order: it has not left yet, found before it left, a day to come
 */
export function decideClaim(
  events: readonly Happened[],
  days: { foundOn: Day; today: Day },
): Result<true, ClaimRefusal> {
  const stage = stageOf(events);
  const leftOn = dayOfEvent(events, 'sent') ?? dayOfEvent(events, 'fetched');
  if (leftOn === null) return refuse({ code: 'not_sent_yet', stage });
  if (days.foundOn < leftOn) return refuse({ code: 'found_before_sent', sentOn: leftOn });
  return days.foundOn > days.today
    ? refuse({ code: 'claim_day_to_come', today: days.today })
    : ok(true);
}

/** What is said to have come of a claim. */
export type ClaimSaid = { kind: ClaimEventKind; on: Day; amountCents: Cents };

/**
 * Decides whether something can have come of a claim. What was refused may be claimed again, paid
 * after all or withdrawn.
 *
 * @returns refuses, in this order: closed, it came already, its turn has not come, a day before it
 *   was found or to come, a payment of nothing, an amount where nothing is paid
 */
export function decideClaimEvent(
  claim: { foundOn: Day; events: readonly ClaimHappened[] },
  said: ClaimSaid,
  today: Day,
): Result<true, ClaimRefusal> {
  const { kind, on, amountCents } = said;
  const turn = turnRefusal(claim.events, kind);
  if (turn) return refuse(turn);
  if (on < claim.foundOn) return refuse({ code: 'before_found', foundOn: claim.foundOn });
  if (on > today) return refuse({ code: 'claim_day_to_come', today });
  if (kind === 'paid') return amountCents > 0n ? ok(true) : refuse({ code: 'paid_nothing' });
  return amountCents > 0n ? refuse({ code: 'amount_for_nothing' }) : ok(true);
}

function turnRefusal(events: readonly ClaimHappened[], kind: ClaimEventKind): ClaimRefusal | null {
  if (kind === 'noted') return null;
  const stage = claimStageOf(events);
  if (stage === 'paid' || stage === 'withdrawn') return { code: 'claim_is_closed', stage };
  const has = (wanted: ClaimEventKind) => events.some((event) => event.kind === wanted);
  const already = events.find((event) => event.kind === kind);
  if (already) return { code: 'came_of_it_already', kind, on: already.on };
  if (kind === 'claimed' && !has('told')) return { code: 'not_told_yet' };
  const isAnswer = kind === 'paid' || kind === 'refused';
  return isAnswer && !has('claimed') ? { code: 'not_claimed_yet' } : null;
}

/** What may come of a claim next, the likeliest first; a note always. */
export function claimActs(events: readonly ClaimHappened[]): ClaimEventKind[] {
  const kinds = ['told', 'claimed', 'paid', 'refused', 'withdrawn', 'noted'] as const;
  return kinds.filter((kind) => turnRefusal(events, kind) === null);
}
