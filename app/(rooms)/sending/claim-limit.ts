import { daysBetween, type Day } from '@/lib/dates/rules';
import type { ClaimTold } from '@/lib/sending/reads/told';
import type { Limit } from '@/lib/sending/rules/limits';

/** The last day for what is next about a claim: to tell, then to claim; null while one waits. */
export function claimLimit(
  { stage, reportByOn, claimByOn }: Pick<ClaimTold, 'stage' | 'reportByOn' | 'claimByOn'>,
  today: Day,
): Limit | null {
  if (stage !== 'to_tell' && stage !== 'to_claim') return null;
  const byOn = stage === 'to_tell' ? reportByOn : claimByOn;
  return { byOn, daysLeft: daysBetween(today, byOn) };
}
