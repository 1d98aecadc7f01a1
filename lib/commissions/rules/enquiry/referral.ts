/** Who brought them, as it was settled; null is "not known yet". */
export type ReferralFact = {
  readonly broughtById: string | null;
  readonly name: string | null;
  /** Decimal text in a hundred of the work alone; '0' for no fee, written so. */
  readonly percent: string | null;
  /** Whether the collector knows of the fee. */
  readonly isKnown: boolean | null;
};

/**
 * Who brought them, in words.
 *
 * @returns null while nothing was settled
 * @source common practice: who brought them and how much is settled on the first day, of the work
 *   alone, and the collector is told
 * @example nobody and 0 is 'nobody, so no fee'; a fee that is 0 is told as one that was settled
 */
export function referralWords({ name, percent, isKnown }: ReferralFact): string | null {
  if (name === null) return percent === null ? null : 'nobody, so no fee';
  const fee = feeWords(percent);
  return [name, fee, percent === null || isNone(percent) ? null : knownWords(isKnown)]
    .filter((part) => part !== null)
    .join(', ');
}

function feeWords(percent: string | null): string {
  if (percent === null) return 'the fee is not settled yet';
  return isNone(percent) ? 'no fee' : `${percent} % of the work alone`;
}

function knownWords(isKnown: boolean | null): string {
  if (isKnown === null) return 'whether the collector knows is not known yet';
  return isKnown ? 'the collector knows' : 'the collector does not know';
}

/** Whether two tell the same: '10' and '10.00' do. */
export function isSameReferral(one: ReferralFact, other: ReferralFact): boolean {
  return (
    one.broughtById === other.broughtById &&
    one.isKnown === other.isKnown &&
    sameDecimal(one.percent, other.percent)
  );
}

function sameDecimal(one: string | null, other: string | null): boolean {
  if (one === null || other === null) return one === other;
  return Number(one) === Number(other);
}

function isNone(percent: string): boolean {
  return Number(percent) === 0;
}
