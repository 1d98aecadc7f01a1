import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import type { JobFact, CommissionFacts } from '@/lib/commissions/rules/facts';
import { moveColumns, readMove } from '@/lib/studio/reads/moving';
import { pegOf } from '@/lib/studio/rules/routes';

/** What has to be read of a commission to know where it stands. */
export const factsSelect = {
  askedOn: true,
  agreements: {
    select: { agreedOn: true, priceCents: true, depositCents: true, promisedOn: true },
    orderBy: { version: 'desc' },
    take: 1,
  },
  sketches: {
    select: { letter: true, shownOn: true, approvals: approvalDays() },
    orderBy: [{ at: 'asc' }, { letter: 'asc' }],
  },
  colourTiles: {
    select: { number: true, shownOn: true, approvals: approvalDays() },
    orderBy: { number: 'asc' },
  },
  instalments: {
    select: { amountCents: true, askedOn: true },
    orderBy: { position: 'asc' },
  },
  payments: {
    select: { amountCents: true, receivedOn: true },
    orderBy: { number: 'asc' },
  },
  startOverride: { select: { why: true, at: true } },
  jobs: {
    select: {
      number: true,
      pieces: true,
      openedAt: true,
      steps: {
        select: {
          name: true,
          peg: true,
          shortestDays: true,
          likelyDays: true,
          longestDays: true,
          caution: true,
        },
        orderBy: { position: 'asc' },
      },
      moves: { select: moveColumns, orderBy: { id: 'asc' } },
    },
    orderBy: { number: 'asc' },
  },
  appointments: {
    select: { kind: true, startsAt: true },
    where: { calledOffAt: null, kind: { not: 'site_visit' } },
    orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
  },
  handOver: { select: { handedOn: true, sale: { select: { totalCents: true } } } },
  ending: { select: { endedOn: true, why: true } },
} as const satisfies Prisma.CommissionSelect;

function approvalDays() {
  return {
    select: { approvedOn: true },
    orderBy: [{ at: 'desc' as const }, { id: 'desc' as const }],
    take: 1,
  };
}

/** A commission's rows as {@link factsSelect} reads them. */
export type FactsRow = Prisma.CommissionGetPayload<{ select: typeof factsSelect }>;

/**
 * The facts of a commission, as the rules take them.
 *
 * @param zone the gallery's own: instants become its days
 */
export function factsOf(row: FactsRow, zone: string): CommissionFacts {
  const agreement = row.agreements[0];
  return {
    askedOn: dayFromDate(row.askedOn),
    agreement: agreement
      ? {
          agreedOn: dayFromDate(agreement.agreedOn),
          priceCents: agreement.priceCents,
          depositCents: agreement.depositCents,
          promisedOn: dayOrNull(agreement.promisedOn),
        }
      : null,
    sketches: row.sketches.map(({ letter, ...shown }) => shownFact(letter, shown)),
    colourTiles: row.colourTiles.map(({ number, ...shown }) => shownFact(String(number), shown)),
    asked: row.instalments.map((each) => ({ ...each, askedOn: dayFromDate(each.askedOn) })),
    payments: row.payments.map((each) => ({ ...each, receivedOn: dayFromDate(each.receivedOn) })),
    jobs: row.jobs.map((job) => jobFact(job, zone)),
    appointments: row.appointments.map((each) => ({
      kind: each.kind === 'delivery' ? 'delivery' : 'hanging',
      on: dayOf(each.startsAt, zone),
    })),
    ...endOf(row, zone),
  };
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
      totalCents: handOver.sale.totalCents,
    },
    ending: ending && { why: ending.why, endedOn: dayFromDate(ending.endedOn) },
  };
}

function shownFact(label: string, shown: { shownOn: Date; approvals: { approvedOn: Date }[] }) {
  const { shownOn, approvals } = shown;
  return {
    label,
    shownOn: dayFromDate(shownOn),
    approvedOn: dayOrNull(approvals[0]?.approvedOn ?? null),
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
