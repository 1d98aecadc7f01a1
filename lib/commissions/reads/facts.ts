import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import type {
  CommissionFacts,
  JobFact,
  ProposalFact,
  ShownFact,
} from '@/lib/commissions/rules/facts';
import { sumCents } from '@/lib/money/rules';
import { readMove } from '@/lib/studio/reads/moving';
import type { factsSelect } from './facts-select';
import { pegOf } from '@/lib/studio/rules/routes';

/** A commission's rows as {@link factsSelect} reads them. */
export type FactsRow = Prisma.CommissionGetPayload<{ select: typeof factsSelect }>;

/**
 * The facts of a commission, as the rules take them.
 *
 * @param zone the gallery's own: instants become its days
 */
export function factsOf(row: FactsRow, zone: string): CommissionFacts {
  return {
    askedOn: dayFromDate(row.askedOn),
    agreement: agreementFact(row),
    plan: row.agreements[0]?.steps ?? [],
    changeOrders: row.changeOrders.map(({ signed, withdrawn, promisedAfter: _, ...order }) => ({
      ...order,
      offeredOn: dayFromDate(order.offeredOn),
      signedOn: dayOrNull(signed?.signedOn ?? null),
      isWithdrawn: withdrawn !== null,
    })),
    proposals: row.proposals.map((each) => proposalFact(each, zone)),
    sketches: row.sketches.map(({ letter, ...shown }) => shownFact(letter, shown)),
    colourTiles: row.colourTiles.map(({ number, given, ...shown }) => ({
      ...shownFact(String(number), shown),
      givenOn: dayOrNull(given?.givenOn ?? null),
    })),
    asked: row.instalments
      .filter((each) => each.withdrawn === null)
      .map(({ amountCents, stepPosition, askedOn, dueOn }) => ({
        ...{ amountCents, stepPosition },
        askedOn: dayFromDate(askedOn),
        dueOn: dayFromDate(dueOn),
      })),
    refunds: [
      ...row.refunds.map((each) => ({ ...each, refundedOn: dayFromDate(each.refundedOn) })),
      ...creditedOf(row),
    ],
    delays: row.delays.map(({ fromOn, toOn, clock, toldOn }) => ({
      clock,
      fromOn: dayFromDate(fromOn),
      toOn: dayFromDate(toOn),
      toldOn: dayFromDate(toldOn),
    })),
    payments: row.payments.map((each) => ({ ...each, receivedOn: dayFromDate(each.receivedOn) })),
    jobs: row.jobs.map((job) => jobFact(job, zone)),
    appointments: row.appointments.map((each) => ({
      kind: leavingKind(each.kind),
      on: dayOf(each.startsAt, zone),
    })),
    isWallKnown: (row.surveys[0]?.wall ?? null) !== null,
    ...endOf(row, zone),
  };
}

function leavingKind(kind: string): CommissionFacts['appointments'][number]['kind'] {
  return kind === 'delivery' || kind === 'fetching' ? kind : 'hanging';
}

/** What was let off on the receipt and became a store credit: theirs, and no longer held for this. */
function creditedOf({ handOver }: FactsRow): CommissionFacts['refunds'] {
  const returns = handOver?.sale.returns ?? [];
  return returns.flatMap(({ returnedOn, refunds }) =>
    refunds.map(({ amountCents }) => ({ amountCents, refundedOn: dayFromDate(returnedOn) })),
  );
}

function endOf(
  row: FactsRow,
  zone: string,
): Pick<CommissionFacts, 'override' | 'handOver' | 'ending'> {
  const { startOverride, handOver, ending } = row;
  return {
    override: startOverride && { why: startOverride.why, on: dayOf(startOverride.at, zone) },
    handOver: handOver && {
      handedOn: dayFromDate(handOver.handedOn),
      totalCents:
        handOver.sale.totalCents -
        sumCents(handOver.sale.returns.map(({ totalCents }) => totalCents)),
    },
    ending: ending && {
      ...{ why: ending.why, feeCents: ending.feeCents },
      endedOn: dayFromDate(ending.endedOn),
    },
  };
}

/** The original price and every signed change; the day that the last of them promised. */
function agreementFact(row: FactsRow): CommissionFacts['agreement'] {
  const agreement = row.agreements[0];
  if (!agreement) return null;
  const signed = row.changeOrders.filter((order) => order.signed !== null);
  const moved = signed.findLast((order) => order.promisedAfter !== null)?.promisedAfter ?? null;
  const { priceCents, depositCents, agreedOn, clayFromOn } = agreement;
  return {
    agreedOn: dayFromDate(agreedOn),
    priceCents: signed.reduce((sum, order) => sum + order.priceCents, priceCents),
    originalCents: priceCents,
    depositCents,
    promisedOn: dayOrNull(moved ?? agreement.promisedOn),
    clayFromOn: dayOrNull(clayFromOn),
  };
}

function proposalFact(row: FactsRow['proposals'][number], zone: string): ProposalFact {
  const { version, at, validUntilOn, sent, answer } = row;
  return {
    version,
    writtenOn: dayOf(at, zone),
    sentOn: dayOrNull(sent?.sentOn ?? null),
    validUntilOn: dayFromDate(validUntilOn),
    answer: answer && { accepted: answer.accepted, on: dayFromDate(answer.answeredOn) },
  };
}

type ShownRow = {
  shownOn: Date;
  approvals: { approvedOn: Date }[];
  changesAsked: { askedOn: Date }[];
  areas: { name: string }[];
};

function shownFact(label: string, shown: ShownRow): ShownFact {
  const { shownOn, approvals, changesAsked, areas } = shown;
  return {
    label,
    shownOn: dayFromDate(shownOn),
    approvedOn: dayOrNull(approvals[0]?.approvedOn ?? null),
    changesOn: dayOrNull(changesAsked[0]?.askedOn ?? null),
    areas: areas.map(({ name }) => name),
  };
}

function jobFact(job: FactsRow['jobs'][number], zone: string): JobFact {
  return {
    number: job.number,
    pieces: job.pieces,
    openedOn: dayOf(job.openedAt, zone),
    steps: job.steps.map((step) => ({ ...step, peg: pegOf(step.peg) })),
    moves: job.moves.map(readMove),
  };
}

function dayOrNull(date: Date | null): Day | null {
  return date && dayFromDate(date);
}
