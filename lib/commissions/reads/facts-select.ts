import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { moveColumns } from '@/lib/studio/reads/moving';

/** What was let off on the receipt of a hand-over, and how much of it became a store credit. */
export const letOff = {
  returns: {
    select: {
      ...{ netCents: true, taxCents: true, feeCents: true, totalCents: true, returnedOn: true },
      refunds: { where: { kind: 'store_credit' }, select: { amountCents: true } },
    },
    orderBy: { number: 'asc' },
  },
} as const satisfies Prisma.SaleSelect;

/** What has to be read of a commission to know where it stands. */
export const factsSelect = {
  askedOn: true,
  agreements: {
    select: {
      agreedOn: true,
      priceCents: true,
      depositCents: true,
      promisedOn: true,
      clayFromOn: true,
      steps: {
        select: { position: true, name: true, event: true, amountCents: true },
        orderBy: { position: 'asc' },
      },
    },
    orderBy: { version: 'desc' },
    take: 1,
  },
  changeOrders: {
    select: {
      number: true,
      offeredOn: true,
      priceCents: true,
      dueEvent: true,
      promisedAfter: true,
      signed: { select: { signedOn: true } },
      withdrawn: { select: { at: true } },
    },
    orderBy: { number: 'asc' },
  },
  proposals: {
    select: {
      version: true,
      at: true,
      validUntilOn: true,
      sent: { select: { sentOn: true } },
      answer: { select: { accepted: true, answeredOn: true } },
    },
    orderBy: { version: 'asc' },
  },
  sketches: {
    select: {
      letter: true,
      shownOn: true,
      approvals: approvalDays(),
      changesAsked: changeDays(),
      areas: { select: { name: true }, orderBy: { position: 'asc' } },
    },
    orderBy: [{ at: 'asc' }, { letter: 'asc' }],
  },
  colourTiles: {
    select: {
      number: true,
      shownOn: true,
      approvals: approvalDays(),
      changesAsked: changeDays(),
      areas: { select: { name: true }, orderBy: { position: 'asc' } },
      given: { select: { givenOn: true } },
    },
    orderBy: { number: 'asc' },
  },
  instalments: {
    select: {
      amountCents: true,
      askedOn: true,
      dueOn: true,
      stepPosition: true,
      withdrawn: { select: { at: true } },
    },
    orderBy: { position: 'asc' },
  },
  refunds: {
    select: { amountCents: true, refundedOn: true },
    orderBy: { number: 'asc' },
  },
  delays: {
    select: { fromOn: true, toOn: true, clock: true, toldOn: true },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
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
    where: { calledOffAt: null, kind: { in: ['hanging', 'delivery', 'fetching'] } },
    orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
  },
  surveys: { select: { wall: true }, orderBy: { version: 'desc' }, take: 1 },
  handOver: { select: { handedOn: true, sale: { select: { totalCents: true, ...letOff } } } },
  ending: { select: { endedOn: true, why: true, feeCents: true } },
} as const satisfies Prisma.CommissionSelect;

function approvalDays() {
  return {
    select: { approvedOn: true },
    orderBy: [{ at: 'desc' as const }, { id: 'desc' as const }],
    take: 1,
  };
}

function changeDays() {
  return {
    select: { askedOn: true },
    orderBy: [{ at: 'desc' as const }, { id: 'desc' as const }],
    take: 1,
  };
}
