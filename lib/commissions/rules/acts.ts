import { isAllowed, type Actor, type Permission } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { mayBegin, type CommissionFacts } from './facts';
import { heldCents } from './money/held';
import { isFinished } from './course/standing';

/** What can be done to a commission from its sheet. */
export const acts = [
  'request',
  'pictures',
  'proposal',
  'agreement',
  'change',
  'sketch',
  'colours',
  'yes',
  'changes',
  'ask',
  'payment',
  'refund',
  'job',
  'begin',
  'page',
  'days',
  'progress',
  'delay',
  'hang',
  'hand-over',
  'end',
] as const;

/** One of the things that can be done. */
export type Act = (typeof acts)[number];

/** What each takes of whoever does it. */
export const actPermissions: Record<Act, Permission> = {
  request: 'commissions.write',
  pictures: 'commissions.write',
  proposal: 'commissions.propose',
  agreement: 'commissions.agree',
  change: 'commissions.agree',
  changes: 'commissions.write',
  refund: 'commissions.give_back',
  page: 'commissions.write',
  days: 'diary.book',
  progress: 'commissions.write',
  delay: 'commissions.write',
  sketch: 'commissions.write',
  colours: 'commissions.write',
  yes: 'commissions.write',
  ask: 'commissions.take_money',
  payment: 'commissions.take_money',
  job: 'commissions.write',
  begin: 'commissions.override_start',
  hang: 'diary.book',
  'hand-over': 'commissions.hand_over',
  end: 'commissions.end',
};

/**
 * What somebody can do to a commission now; the writes look once more.
 *
 * @param owedCents what is still owed in all; null while nothing is agreed
 * @example after the hand-over asking and a payment are left, while something is owed, and what is
 *   remembered; after an early end a payment, while some of what stays is owed
 */
export function actsOpen(
  facts: CommissionFacts,
  owedCents: bigint | null,
  actor: Actor,
  today: Day,
): ReadonlySet<Act> {
  const open = acts.filter((act) => isOpen(act, { facts, owedCents, today }));
  return new Set(open.filter((act) => isAllowed(actor.roles, actPermissions[act])));
}

type Now = { facts: CommissionFacts; owedCents: bigint | null; today: Day };

function isOpen(act: Act, { facts, owedCents, today }: Now): boolean {
  if (act === 'refund') return heldCents(facts) > 0n;
  if (act === 'payment') return (owedCents ?? 0n) > 0n;
  if (facts.ending) return false;
  if (act === 'ask' && facts.handOver) return (owedCents ?? 0n) > 0n;
  if (facts.handOver) return act === 'progress' || act === 'page';
  return needs[act]?.(facts, today) ?? true;
}

/** What some of the acts need before; the others are open until the end. */
const needs: Partial<Record<Act, (facts: CommissionFacts, today: Day) => boolean>> = {
  proposal: (facts) => facts.agreement === null,
  agreement: (facts) => facts.agreement === null,
  change: (facts) => facts.agreement !== null,
  ask: (facts) => facts.agreement !== null,
  'hand-over': (facts) => facts.agreement !== null && facts.jobs.every(isFinished),
  job: (facts) => facts.jobs.length === 0 && (facts.agreement !== null || facts.override !== null),
  begin: (facts, today) => facts.override === null && mayBegin(facts, today).missing.length > 0,
};
