import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addressLine } from '@/lib/collectors/rules';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { paidCents, type CommissionFacts } from '@/lib/commissions/rules/facts';
import {
  feeByAgreement,
  type CancelTerms,
  type EndStage,
} from '@/lib/commissions/rules/money/ending';
import { heldCents, receivableCents } from '@/lib/commissions/rules/money/held';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';

/** An early end as its paper settles it, in cents. */
export type SettlementTold = {
  commissionNumber: number;
  work: string;
  collector: string;
  address: string | null;
  why: string;
  endedOn: Day;
  /** Null for what was ended before stages were kept. */
  stage: EndStage | null;
  /** Null where nothing was agreed. */
  agreed: { on: Day; by: string; priceCents: Cents; terms: CancelTerms } | null;
  /** What the agreement says at this stage; what stays is another where the owner said so. */
  byAgreementCents: Cents;
  feeCents: Cents;
  /** The part of what stays that was paid when it ended. */
  keptCents: Cents;
  /** What was there when it ended. */
  paidThenCents: Cents;
  /** What came in and what went back since. */
  cameInSinceCents: Cents;
  wentBackSinceCents: Cents;
  /** What still has to go back, and what is still to be paid. */
  toGoBackCents: Cents;
  stillOwedCents: Cents;
  fate: string;
  jobs: CommissionFacts['jobs'];
  writtenBy: string;
  writtenAt: Date;
};

const settlementSelect = {
  ...factsSelect,
  ...{ number: true, title: true, collector: true },
  agreements: {
    select: {
      ...factsSelect.agreements.select,
      ...{ designFeeCents: true, cancelMakingPercent: true, cancelFinishedPercent: true },
      agreedBy: true,
    },
    orderBy: { version: 'desc' },
    take: 1,
  },
  ending: {
    select: {
      ...factsSelect.ending.select,
      ...{ stage: true, keptCents: true, fate: true, staffId: true, at: true },
    },
  },
  payments: {
    ...factsSelect.payments,
    select: { ...factsSelect.payments.select, receivedAt: true },
  },
  refunds: {
    ...factsSelect.refunds,
    select: { ...factsSelect.refunds.select, refundedAt: true },
  },
} as const satisfies Prisma.CommissionSelect;

type SettlementRow = Prisma.CommissionGetPayload<{ select: typeof settlementSelect }>;

/**
 * The settlement of a commission that ended early, with what came in and went back since; for those
 * who see money.
 *
 * @returns null for one that did not end early
 */
export async function findSettlement(
  actor: Actor,
  commissionId: string,
): Promise<SettlementTold | null> {
  assertAllowed(actor, 'commissions.see_money');
  return settlementForCollector(commissionId);
}

/** {@link findSettlement} for the collector's own page: whoever opened the link may see it. */
export async function settlementForCollector(commissionId: string): Promise<SettlementTold | null> {
  const row = await db().commission.findUnique({
    where: { id: commissionId },
    select: settlementSelect,
  });
  if (!row?.ending) return null;
  const { number: commissionNumber, title: work, collector, ending } = row;
  const { timeZone } = await getGallery();
  const facts = factsOf(row, timeZone);
  const writer = await db().staff.findUnique({
    where: { id: ending.staffId },
    select: { name: true },
  });
  const agreed = agreedOf(row, facts);
  const { why, stage, feeCents, keptCents, fate, at: writtenAt } = ending;
  return {
    ...{ commissionNumber, work, collector: collector.name, address: addressLine(collector) },
    ...{ why, stage, feeCents, keptCents, fate, writtenAt, agreed },
    endedOn: dayFromDate(ending.endedOn),
    byAgreementCents: stage
      ? feeByAgreement(stage, agreed?.terms ?? null, agreed?.priceCents ?? 0n)
      : feeCents,
    ...since(row, { at: writtenAt, paid: paidCents(facts) }),
    toGoBackCents: heldCents(facts),
    stillOwedCents: receivableCents(facts),
    jobs: facts.jobs,
    writtenBy: writer?.name ?? 'the gallery',
  };
}

function agreedOf(row: SettlementRow, facts: CommissionFacts): SettlementTold['agreed'] {
  const kept = row.agreements[0];
  if (!kept || !facts.agreement) return null;
  const { agreedOn: on, priceCents } = facts.agreement;
  const { designFeeCents, cancelMakingPercent, cancelFinishedPercent, agreedBy: by } = kept;
  const terms = {
    designFeeCents,
    cancelMakingPercent: cancelMakingPercent.toString(),
    cancelFinishedPercent: cancelFinishedPercent.toString(),
  };
  return { on, by, priceCents, terms };
}

function since(row: SettlementRow, { at, paid }: { at: Date; paid: Cents }) {
  const later = row.payments.filter((each) => each.receivedAt > at);
  const back = row.refunds.filter((each) => each.refundedAt > at);
  const cameInSinceCents = sumCents(later.map((each) => each.amountCents));
  const wentBackSinceCents = sumCents(back.map((each) => each.amountCents));
  const paidThenCents = paid - cameInSinceCents + wentBackSinceCents;
  return { cameInSinceCents, wentBackSinceCents, paidThenCents };
}
