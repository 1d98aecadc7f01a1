import type { Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { missingBeforeClay, type BeforeClay } from '@/lib/studio/rules';
import { coloursHaveYes } from '@/lib/studio/rules/colours';
import type { JobInDays } from '@/lib/studio/rules/days';

/**
 * A sketch by its letter or a colour tile by its number, and the days of the yes to it and of the
 * last changes that were asked for, if any.
 */
export type ShownFact = {
  readonly label: string;
  readonly shownOn: Day;
  readonly approvedOn: Day | null;
  readonly changesOn: Day | null;
  /** The names of the colour areas in a sketch, or of those that a tile is for. */
  readonly areas: readonly string[];
};

/** A colour tile, and since when its twin is in the collector's hands. */
export type TileFact = ShownFact & { readonly givenOn: Day | null };

/** What was agreed, with every signed change. Cents before tax; the deposit is of price and tax. */
export type AgreementFact = {
  readonly agreedOn: Day;
  /** The original price and all signed changes. */
  readonly priceCents: Cents;
  readonly originalCents: Cents;
  readonly depositCents: Cents;
  /** By the agreement and the last signed change that moved it. */
  readonly promisedOn: Day | null;
  /** The first day on which clay may be cut, where a right to cancel runs. */
  readonly clayFromOn: Day | null;
};

/** A proposal by its version. */
export type ProposalFact = {
  readonly version: number;
  readonly writtenOn: Day;
  readonly sentOn: Day | null;
  readonly validUntilOn: Day;
  readonly answer: { readonly accepted: boolean; readonly on: Day } | null;
};

/** A change order by its number: still open while it is neither signed nor withdrawn. */
export type ChangeOrderFact = {
  readonly number: number;
  readonly offeredOn: Day;
  readonly priceCents: Cents;
  readonly dueEvent: PlanEvent | null;
  readonly signedOn: Day | null;
  readonly isWithdrawn: boolean;
};

/** What makes a part of the price fall due. */
export const planEvents = [
  'agreed',
  'colours_approved',
  'out_of_bisque',
  'before_hand_over',
  'hung',
] as const;

/** One of the {@link planEvents}. */
export type PlanEvent = (typeof planEvents)[number];

/** A step of the agreed plan: of the price with its tax, in cents. The last takes what is left. */
export type PlanStepFact = {
  readonly position: number;
  readonly name: string;
  readonly event: PlanEvent;
  readonly amountCents: Cents;
};

/** Money that was asked for and not withdrawn. */
export type AskedFact = {
  readonly amountCents: Cents;
  readonly askedOn: Day;
  readonly dueOn: Day;
  /** The step of the plan that it asks for; null for anything else. */
  readonly stepPosition: number | null;
};

/** The collector was told that the day moves. */
export type DelayFact = {
  readonly fromOn: Day;
  readonly toOn: Day;
  readonly clock: Clock;
  readonly toldOn: Day;
};

/** Whose clock time runs on. */
export const clocks = [
  'collector',
  'gallery',
  'studio',
  'clay',
  'kiln',
  'installer',
  'building',
] as const;

/** One of the {@link clocks}. */
export type Clock = (typeof clocks)[number];

/** A job of the commission: the studio's own picture of it, its number, and when it was opened. */
export type JobFact = JobInDays & { readonly number: number; readonly openedOn: Day };

/** A hanging or a delivery that was booked and not called off. */
export type AppointmentFact = {
  readonly kind: 'hanging' | 'delivery' | 'fetching';
  readonly on: Day;
};

/** Everything from which it is worked out where a commission stands. */
export type CommissionFacts = {
  readonly askedOn: Day;
  /** The newest agreement; null before there is one. */
  readonly agreement: AgreementFact | null;
  /** In the order they were shown. */
  readonly sketches: readonly ShownFact[];
  readonly colourTiles: readonly TileFact[];
  /** In the order of their versions. */
  readonly proposals: readonly ProposalFact[];
  readonly changeOrders: readonly ChangeOrderFact[];
  /** The agreed plan of payments; empty where none was agreed. */
  readonly plan: readonly PlanStepFact[];
  readonly asked: readonly AskedFact[];
  /** In the order they came in. */
  readonly payments: readonly { readonly amountCents: Cents; readonly receivedOn: Day }[];
  /** What went back of the payments, or became a store credit. */
  readonly refunds: readonly { readonly amountCents: Cents; readonly refundedOn: Day }[];
  readonly delays: readonly DelayFact[];
  readonly override: { readonly why: string; readonly on: Day } | null;
  readonly jobs: readonly JobFact[];
  readonly appointments: readonly AppointmentFact[];
  /** Whether somebody looked what the wall is made of. */
  readonly isWallKnown: boolean;
  /** The hand-over, and what its receipt comes to in cents, less what was let off on it since. */
  readonly handOver: { readonly handedOn: Day; readonly totalCents: Cents } | null;
  /** An early end, and what stays of it in cents. */
  readonly ending: {
    readonly endedOn: Day;
    readonly why: string;
    readonly feeCents: Cents;
  } | null;
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
 * The database holds the same rule. The days in which the collector may cancel hold even against
 * the owner's word.
 *
 * @param today the day on which it would begin
 * @returns what is missing, in the order of the band; a deposit only once it is agreed
 * @source common practice: nothing is cut before the written yes and the deposit
 * @example a deposit of nothing is there as soon as it is agreed
 */
export function mayBegin(facts: CommissionFacts, today: Day): MayBegin {
  const begin = {
    commissionNumber: 0,
    hasEnded: facts.ending !== null,
    depositCents: facts.agreement?.depositCents ?? null,
    paidCents: paidCents(facts),
    sketchHasYes: approvedOf(facts.sketches) !== undefined,
    coloursHaveYes: coloursAreApproved(facts),
    clayFromOn: facts.agreement?.clayFromOn ?? null,
    today,
  };
  const missing = missingBeforeClay({ ...begin, isLetBegin: false });
  const isLetBegin = facts.override !== null;
  const stillMissing = missingBeforeClay({ ...begin, isLetBegin });
  return {
    may: facts.ending === null && stillMissing.length === 0,
    missing,
    byOverride: isLetBegin && missing.length > 0,
  };
}

/** Whether every colour area of the approved sketch has an approved tile, and one tile at least. */
export function coloursAreApproved(
  facts: Pick<CommissionFacts, 'sketches' | 'colourTiles'>,
): boolean {
  const approved = facts.colourTiles.filter((tile) => tile.approvedOn !== null);
  return coloursHaveYes(
    approvedOf(facts.sketches)?.areas ?? [],
    approved.map((tile) => tile.areas),
  );
}

/** What a sum of money is made from. */
type MoneyFacts = Pick<CommissionFacts, 'agreement' | 'payments' | 'refunds'>;

/** The day of the last yes that the colours needed; null while one is missing. */
export function coloursApprovedOn(
  facts: Pick<CommissionFacts, 'sketches' | 'colourTiles'>,
): Day | null {
  return coloursAreApproved(facts) ? (approvedOf(facts.colourTiles)?.approvedOn ?? null) : null;
}

/** Whether what was paid reaches the deposit of the agreement; false before there is one. */
export function depositIsThere(facts: MoneyFacts): boolean {
  return facts.agreement !== null && paidCents(facts) >= facts.agreement.depositCents;
}

/** What was paid in all, less what went back, in cents. */
export function paidCents(facts: Pick<CommissionFacts, 'payments' | 'refunds'>): Cents {
  const inCents = sumCents(facts.payments.map((payment) => payment.amountCents));
  return inCents - sumCents(facts.refunds.map((refund) => refund.amountCents));
}

/**
 * The day on which the payments reached the deposit.
 *
 * @returns null while they do not; the day of the agreement for a deposit of nothing
 */
export function depositThereOn(facts: MoneyFacts): Day | null {
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
export function approvedOf<Fact extends ShownFact>(shown: readonly Fact[]): Fact | undefined {
  return shown
    .filter((each) => each.approvedOn !== null)
    .reduce<Fact | undefined>((last, each) => (isLater(each, last) ? each : last), undefined);
}

function isLater(each: ShownFact, last: ShownFact | undefined): boolean {
  return (each.approvedOn ?? '') >= (last?.approvedOn ?? '');
}
