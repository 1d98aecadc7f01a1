import type { Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';

/** What comes before the clay of a commission. */
export type BeforeClay = 'agreement' | 'sketch' | 'colours' | 'deposit' | 'days_to_cancel';

/** What is known of a commission when somebody wants to begin its making. */
export type BeginFacts = {
  commissionNumber: number;
  hasEnded: boolean;
  /** The owner let it begin, and said why. */
  isLetBegin: boolean;
  /** Null while nothing is agreed. */
  depositCents: Cents | null;
  paidCents: Cents;
  sketchHasYes: boolean;
  coloursHaveYes: boolean;
  /** The first day on which clay may be cut, where a right to cancel runs; null for no wait. */
  clayFromOn: Day | null;
  /** The day on which it would begin. */
  today: Day;
};

/** Why a commission's clay may not be begun. */
export type BeginRefusal =
  | { code: 'commission_ended'; commissionNumber: number }
  | {
      code: 'making_not_yet';
      commissionNumber: number;
      missing: readonly BeforeClay[];
      /** What of the deposit is still to come; null while nothing is agreed. */
      depositLeftCents: Cents | null;
    };

/**
 * What is still missing before the clay of a commission may be touched.
 *
 * The owner's word lets it begin without any of them, but for the days in which the collector may
 * cancel: those are the law's.
 *
 * @returns empty when the making may begin; the deposit is not asked for before there is an
 *   agreement that names it
 * @source common practice: agreement, approved sketch, approved colours and deposit come first
 */
export function missingBeforeClay(facts: BeginFacts): BeforeClay[] {
  const missing: BeforeClay[] = [];
  if (facts.clayFromOn !== null && facts.today < facts.clayFromOn) missing.push('days_to_cancel');
  if (facts.isLetBegin) return missing;
  if (facts.depositCents === null) missing.push('agreement');
  if (!facts.sketchHasYes) missing.push('sketch');
  if (!facts.coloursHaveYes) missing.push('colours');
  if (facts.depositCents !== null && facts.paidCents < facts.depositCents) missing.push('deposit');
  return missing;
}

/**
 * Why the making of a commission may not begin; null when it may.
 */
export function refusalToBegin(facts: BeginFacts): BeginRefusal | null {
  const { commissionNumber, depositCents, paidCents } = facts;
  if (facts.hasEnded) return { code: 'commission_ended', commissionNumber };
  const missing = missingBeforeClay(facts);
  if (missing.length === 0) return null;
  const depositLeftCents =
    depositCents === null ? null : depositCents > paidCents ? depositCents - paidCents : 0n;
  return { code: 'making_not_yet', commissionNumber, missing, depositLeftCents };
}
