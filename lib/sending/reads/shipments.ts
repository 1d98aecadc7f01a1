import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { Opening } from '@/lib/freight/rules/measures';
import { db } from '@/lib/platform/db/client';
import { isClaimOpen } from '@/lib/sending/rules/claims';
import { asksOf, limitsOf, type Asks, type Limit } from '@/lib/sending/rules/limits';
import { dayOfEvent, stageOf } from '@/lib/sending/rules/way';
import type { Stage } from '@/lib/sending/rules/words';
import { shipmentColumns, shipmentOf, type EventKept, type ShipmentKept } from './stored';
import {
  claimColumns,
  claimOf,
  readNames,
  reportColumns,
  reportOf,
  type ClaimTold,
  type ReportTold,
} from './told';

/** What a shipment is for. */
export type ForWhat = {
  commission: { number: number; title: string } | null;
  sale: { number: number; soldOn: Day } | null;
  collector: { id: string; name: string } | null;
};

/** A shipment on its sheet. */
export type ShipmentTold = Omit<ShipmentKept, 'events' | 'sale'> & {
  forWhat: ForWhat;
  madeBy: string;
  stage: Stage;
  events: readonly (EventKept & { by: string })[];
  /** The carrier's number as it stands last; empty while there is none. */
  tracking: string;
  reports: readonly ReportTold[];
  claims: readonly ClaimTold[];
  /** The narrowest place on the way to the wall, as it was measured last; null where nobody did. */
  opening: Opening | null;
};

const toldColumns = {
  ...shipmentColumns,
  commission: {
    select: {
      ...{ number: true, title: true },
      surveys: {
        select: { narrowWidthUm: true, narrowHeightUm: true },
        orderBy: { version: 'desc' },
        take: 1,
      },
    },
  },
  collector: { select: { id: true, name: true } },
  reports: { orderBy: [{ on: 'asc' }, { id: 'asc' }], select: reportColumns },
  claims: { orderBy: { number: 'asc' }, select: claimColumns },
} as const satisfies Prisma.ShipmentSelect;

/** A shipment with everything about it; null when no shipment has that number. */
export async function findShipment(actor: Actor, number: number): Promise<ShipmentTold | null> {
  assertAllowed(actor, 'sending.do');
  const row = await db().shipment.findUnique({ where: { number }, select: toldColumns });
  if (!row) return null;
  const nameOf = await readNames(db());
  const { commission, collector, reports, claims, ...rest } = row;
  const { events, sale, ...shipment } = shipmentOf(rest);
  return {
    ...{ ...shipment, opening: openingOf(commission?.surveys[0]) },
    forWhat: { commission: commission && told(commission), sale, collector },
    ...{ madeBy: nameOf(shipment.madeById), stage: stageOf(events) },
    events: events.map((event) => ({ ...event, by: nameOf(event.staffId) })),
    tracking: events.findLast(({ tracking }) => tracking !== '')?.tracking ?? '',
    reports: reports.map((report) => reportOf(report, nameOf)),
    claims: claims.map((claim) => claimOf(claim, nameOf)),
  };
}

function told({ number, title }: { number: number; title: string }) {
  return { number, title };
}

function openingOf(
  survey: { narrowWidthUm: number | null; narrowHeightUm: number | null } | undefined,
): Opening | null {
  const { narrowWidthUm: widthUm, narrowHeightUm: heightUm } = survey ?? {};
  return widthUm && heightUm ? { widthUm, heightUm } : null;
}

/** A shipment as a list names it. */
export type ShipmentListed = {
  number: number;
  toName: string;
  how: ShipmentKept['how'];
  carrier: string;
  what: string;
  boxes: number;
  stage: Stage;
  /** The day of the last that happened; null when nothing did. */
  lastOn: Day | null;
  tracking: string;
  asks: Asks;
  /** By when damage must be told, once it came. */
  reportBy: Limit | null;
};

const listedColumns = {
  ...{ number: true, toName: true, how: true, carrier: true, carrierRule: true },
  commission: { select: { number: true, title: true } },
  sale: { select: { number: true } },
  events: {
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    select: { kind: true, on: true, tracking: true },
  },
  reports: { where: { when: { in: ['in', 'hand_over'] } }, select: { id: true }, take: 1 },
  claims: { select: { id: true }, take: 1 },
  _count: { select: { crates: true } },
} as const satisfies Prisma.ShipmentSelect;

type ListedRow = Prisma.ShipmentGetPayload<{ select: typeof listedColumns }>;

/** The most shipments that the list of those that are over shows. */
const listMost = 200;

/** The shipments, the newest first; at most 200. */
export async function listShipments(actor: Actor, today: Day): Promise<ShipmentListed[]> {
  assertAllowed(actor, 'sending.do');
  return list({}, today);
}

/** The shipments of a commission or of a sale, the newest first. */
export async function listShipmentsOf(
  actor: Actor,
  of: { commissionId: string } | { saleId: string },
  today: Day,
): Promise<ShipmentListed[]> {
  assertAllowed(actor, 'sending.do');
  return list(of, today);
}

async function list(where: Prisma.ShipmentWhereInput, today: Day): Promise<ShipmentListed[]> {
  const rows = await db().shipment.findMany({
    where,
    select: listedColumns,
    orderBy: { number: 'desc' },
    take: listMost,
  });
  return rows.map((row) => listed(row, today));
}

function listed(row: ListedRow, today: Day): ShipmentListed {
  const { number, toName, how, carrier, commission, sale, reports, claims, _count } = row;
  const events = row.events.map((event) => ({ ...event, on: dayFromDate(event.on) }));
  const isLookedAt = reports.length > 0 || claims.length > 0;
  const came = dayOfEvent(events, 'arrived');
  return {
    ...{ number, toName, how, carrier, boxes: _count.crates, stage: stageOf(events) },
    what: commission?.title ?? (sale ? `receipt ${sale.number}` : ''),
    lastOn: events.at(-1)?.on ?? null,
    tracking: events.findLast(({ tracking }) => tracking !== '')?.tracking ?? '',
    asks: asksOf({ events, terms: row.carrierRule, isLookedAt }, today),
    reportBy: came && limitsOf(events, row.carrierRule, { foundOn: came, today }).reportBy,
  };
}

/** A claim as a list names it. */
export type ClaimListed = ClaimTold & { shipmentNumber: number; toName: string };

/** The claims of which something is still to be done, the one whose day comes first at the top. */
export async function listOpenClaims(actor: Actor): Promise<ClaimListed[]> {
  assertAllowed(actor, 'sending.do');
  const rows = await db().damageClaim.findMany({
    where: { events: { none: { kind: { in: ['paid', 'refused', 'withdrawn'] } } } },
    select: { ...claimColumns, shipment: { select: { number: true, toName: true } } },
    orderBy: [{ claimByOn: 'asc' }, { number: 'asc' }],
    take: listMost,
  });
  const nameOf = await readNames(db());
  return rows
    .map(({ shipment, ...row }) => ({
      ...claimOf(row, nameOf),
      ...{ shipmentNumber: shipment.number, toName: shipment.toName },
    }))
    .filter(({ events }) => isClaimOpen(events));
}
