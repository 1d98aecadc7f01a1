import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { PlanStep } from '@/lib/commissions/rules/proposal/plan';
import type { CommissionLine } from '@/lib/commissions/rules/proposal/lines';
import type { CommissionTaxAs } from '@/lib/commissions/rules/agreement/tax';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';

/** What has to be read of a proposal; the build-up is read apart, for the owner alone. */
export const proposalSelect = {
  id: true,
  version: true,
  understanding: true,
  widthUm: true,
  heightUm: true,
  depthUm: true,
  pieces: true,
  weightG: true,
  priceCents: true,
  taxPlaceId: true,
  taxPlace: { select: { name: true } },
  taxAs: true,
  designFeeCents: true,
  designFeeCredited: true,
  roundsIncluded: true,
  extraRoundCents: true,
  readyFromOn: true,
  readyToOn: true,
  validUntilOn: true,
  notIncluded: true,
  terms: true,
  body: true,
  contentSha256: true,
  lines: {
    select: { kind: true, words: true, amountCents: true },
    orderBy: { position: 'asc' },
  },
  steps: {
    select: { position: true, name: true, event: true, percent: true, amountCents: true },
    orderBy: { position: 'asc' },
  },
  sent: { select: { sentOn: true, how: true } },
  answer: {
    select: { accepted: true, answeredBy: true, words: true, answeredOn: true, signatureId: true },
  },
} as const satisfies Prisma.ProposalSelect;

/** A proposal's row as {@link proposalSelect} reads it. */
export type ProposalRow = Prisma.ProposalGetPayload<{ select: typeof proposalSelect }>;

/** A proposal as pages and papers show it: nothing of how its price was built up. */
export type ProposalShown = {
  id: string;
  version: number;
  understanding: string;
  widthUm: number;
  heightUm: number;
  depthUm: number;
  pieces: number;
  weightG: number;
  /** Before tax. */
  priceCents: Cents;
  taxPlaceId: string;
  taxPlace: string;
  taxAs: CommissionTaxAs;
  designFeeCents: Cents;
  designFeeCredited: boolean;
  roundsIncluded: number;
  extraRoundCents: Cents;
  readyFromOn: Day | null;
  readyToOn: Day | null;
  validUntilOn: Day;
  notIncluded: string;
  terms: string;
  body: string;
  contentSha256: string;
  lines: readonly CommissionLine[];
  steps: readonly PlanStep[];
  /** Price and tax as the plan was reckoned. */
  totalCents: Cents;
  sent: { on: Day; how: string } | null;
  answer: { accepted: boolean; by: string; words: string; on: Day; isSigned: boolean } | null;
};

/** A proposal from its row. */
export function proposalOf(row: ProposalRow): ProposalShown {
  const { taxPlace, sent, answer, steps, ...rest } = row;
  return {
    ...rest,
    taxPlace: taxPlace.name,
    readyFromOn: row.readyFromOn && dayFromDate(row.readyFromOn),
    readyToOn: row.readyToOn && dayFromDate(row.readyToOn),
    validUntilOn: dayFromDate(row.validUntilOn),
    steps: steps.map((step) => ({ ...step, percent: step.percent?.toString() ?? null })),
    totalCents: steps.reduce((sum, step) => sum + step.amountCents, 0n),
    sent: sent && { on: dayFromDate(sent.sentOn), how: sent.how },
    answer: answer && {
      ...{ accepted: answer.accepted, by: answer.answeredBy, words: answer.words },
      ...{ on: dayFromDate(answer.answeredOn), isSigned: answer.signatureId !== null },
    },
  };
}

/** The accepted proposal of a commission, inside a transaction or beside; null before there is one. */
export async function acceptedProposal(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<ProposalShown | null> {
  const row = await from.proposal.findFirst({
    where: { commissionId, answer: { is: { accepted: true } } },
    select: proposalSelect,
    orderBy: { version: 'desc' },
  });
  return row && proposalOf(row);
}

/** The newest proposal that went out; null before one did. For the collector's own page too. */
export async function sentProposal(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<ProposalShown | null> {
  const row = await from.proposal.findFirst({
    where: { commissionId, sent: { isNot: null } },
    select: proposalSelect,
    orderBy: { version: 'desc' },
  });
  return row && proposalOf(row);
}
