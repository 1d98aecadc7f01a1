import type { Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { missingBeforeClay, type BeforeClay } from '@/lib/studio/rules';
import type { JobInDays } from '@/lib/studio/rules/days';

/** A sketch by its letter or a colour tile by its number, and the day of the yes to it, if any. */
export type ShownFact = {
  readonly label: string;
  readonly shownOn: Day;
  readonly approvedOn: Day | null;
};

/** What the newest agreement says. Cents before tax; the deposit is a part of price and tax. */
export type AgreementFact = {
  readonly agreedOn: Day;
  readonly priceCents: Cents;
  readonly depositCents: Cents;
  readonly promisedOn: Day | null;
};

/** A job of the commission: the studio's own picture of it, its number, and when it was opened. */
export type JobFact = JobInDays & { readonly number: number; readonly openedOn: Day };

/** A hanging or a delivery that was booked and not called off. */
export type AppointmentFact = { readonly kind: 'hanging' | 'delivery'; readonly on: Day };

/** Everything from which it is worked out where a commission stands. */
export type CommissionFacts = {
  readonly askedOn: Day;
  /** The newest agreement; null before there is one. */
  readonly agreement: AgreementFact | null;
  /** In the order they were shown. */
  readonly sketches: readonly ShownFact[];
  readonly colourTiles: readonly ShownFact[];
  readonly asked: readonly { readonly amountCents: Cents; readonly askedOn: Day }[];
  /** In the order they came in. */
  readonly payments: readonly { readonly amountCents: Cents; readonly receivedOn: Day }[];
  readonly override: { readonly why: string; readonly on: Day } | null;
  readonly jobs: readonly JobFact[];
  readonly appointments: readonly AppointmentFact[];
  readonly handOver: { readonly handedOn: Day; readonly totalCents: Cents } | null;
  readonly ending: { readonly endedOn: Day; readonly why: string } | null;
};

/** Whether the making may begin, what is missing, and whether it is the owner's word that lets it. */
export type MayBegin = {
  readonly may: boolean;
  readonly missing: readonly BeforeClay[];
  readonly byOverride: boolean;
};

/**
 * Whether the making may begin: agreement, approved sketch, approved colours and the deposit are
 * there, or the owner let it begin and said why. Never once it has ended.
 *
 * The database holds the same rule.
 *
 * @returns what is missing, in the order of the band; a deposit only once it is agreed
 * @source common practice: nothing is cut before the written yes and the deposit
 * @example a deposit of nothing is there as soon as it is agreed
 */
export function mayBegin(facts: CommissionFacts): MayBegin {
  const missing = missingBeforeClay({
    commissionNumber: 0,
    hasEnded: facts.ending !== null,
    isLetBegin: false,
    depositCents: facts.agreement?.depositCents ?? null,
    paidCents: paidCents(facts),
    sketchHasYes: approvedOf(facts.sketches) !== undefined,
    coloursHaveYes: approvedOf(facts.colourTiles) !== undefined,
  });
  const byOverride = missing.length > 0 && facts.override !== null;
  return {
    may: facts.ending === null && (missing.length === 0 || byOverride),
    missing,
    byOverride,
  };
}

/** Whether what was paid reaches the deposit of the newest agreement; false before there is one. */
export function depositIsThere(facts: Pick<CommissionFacts, 'agreement' | 'payments'>): boolean {
  return facts.agreement !== null && paidCents(facts) >= facts.agreement.depositCents;
}

/** What was paid in all, in cents. */
export function paidCents(facts: Pick<CommissionFacts, 'payments'>): Cents {
  return sumCents(facts.payments.map((payment) => payment.amountCents));
}

/**
 * The day on which the payments reached the deposit.
 *
 * @returns null while they do not; the day of the agreement for a deposit of nothing
 */
export function depositThereOn(facts: Pick<CommissionFacts, 'agreement' | 'payments'>): Day | null {
  if (!facts.agreement || !depositIsThere(facts)) return null;
  let sum = 0n;
  let reachedOn = facts.agreement.agreedOn;
  for (const payment of facts.payments) {
    if (sum >= facts.agreement.depositCents) break;
    sum += payment.amountCents;
    if (payment.receivedOn > reachedOn) reachedOn = payment.receivedOn;
  }
  return reachedOn;
}

/** The one that was approved last; undefined when none was. */
export function approvedOf(shown: readonly ShownFact[]): ShownFact | undefined {
  return shown
    .filter((each) => each.approvedOn !== null)
    .reduce<ShownFact | undefined>((last, each) => (isLater(each, last) ? each : last), undefined);
}

function isLater(each: ShownFact, last: ShownFact | undefined): boolean {
  return (each.approvedOn ?? '') >= (last?.approvedOn ?? '');
}
