import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { BoxKind } from '@/lib/freight/rules/boxing';
import type { Cents } from '@/lib/money/rules';
import type { CarrierTerms } from '@/lib/sending/rules/carriers';
import type { ContentTold } from '@/lib/sending/rules/typed/contents';
import type { EventKind, SentHow } from '@/lib/sending/rules/words';

/** Something in a box, as it is kept. */
export type ContentKept = ContentTold & { readonly id: string };

/** A box or crate, as it is kept. */
export type BoxKept = {
  readonly id: string;
  readonly position: number;
  readonly kind: BoxKind;
  readonly lengthUm: number;
  readonly widthUm: number;
  readonly heightUm: number;
  readonly paddingUm: number;
  readonly reckonedG: number;
  readonly scaleG: number | null;
  readonly note: string;
  readonly contents: readonly ContentKept[];
};

/** Something that happened to a shipment, as it is kept. */
export type EventKept = {
  readonly kind: EventKind;
  readonly on: Day;
  readonly tracking: string;
  readonly takenBy: string;
  readonly words: string;
  readonly drawingId: string | null;
  readonly staffId: string;
  readonly at: Date;
};

/** A shipment with its boxes and what became of it, as it is kept. */
export type ShipmentKept = {
  readonly id: string;
  readonly number: number;
  readonly how: SentHow;
  readonly carrier: string;
  readonly terms: CarrierTerms | null;
  readonly commissionId: string | null;
  readonly saleId: string | null;
  readonly sale: { readonly number: number; readonly soldOn: Day } | null;
  readonly collectorId: string | null;
  readonly toName: string;
  readonly toAddress: string;
  readonly toPhone: string;
  readonly insuredCents: Cents;
  readonly insuredBy: string;
  readonly note: string;
  readonly madeById: string;
  readonly at: Date;
  readonly boxes: readonly BoxKept[];
  readonly events: readonly EventKept[];
};

const contentColumns = {
  ...{ id: true, words: true, pieces: true, partNumber: true, weightG: true, layer: true },
} as const satisfies Prisma.CrateContentSelect;

/** What a shipment is read by. */
export const shipmentColumns = {
  ...{ id: true, number: true, how: true, carrier: true, carrierRule: true },
  ...{ commissionId: true, saleId: true, collectorId: true },
  ...{ toName: true, toAddress: true, toPhone: true, insuredCents: true, insuredBy: true },
  ...{ note: true, madeById: true, at: true },
  sale: { select: { number: true, soldOn: true } },
  crates: {
    orderBy: { position: 'asc' },
    select: {
      ...{ id: true, position: true, kind: true, lengthUm: true, widthUm: true, heightUm: true },
      ...{ paddingUm: true, reckonedG: true, scaleG: true, note: true },
      contents: { orderBy: { position: 'asc' }, select: contentColumns },
    },
  },
  events: {
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    select: {
      ...{ kind: true, on: true, tracking: true, takenBy: true, words: true },
      ...{ drawingId: true, staffId: true, at: true },
    },
  },
} as const satisfies Prisma.ShipmentSelect;

type ShipmentRow = Prisma.ShipmentGetPayload<{ select: typeof shipmentColumns }>;

/** A row of a carrier's terms as it is reckoned with. */
export function termsOf(row: Prisma.CarrierRuleGetPayload<object>): CarrierTerms {
  const { id, name, divisorIn3, sides, overIn3, isFreight, reportDays, claimDays } = row;
  return {
    ...{ id, name, divisorIn3, sides, overIn3, isFreight, reportDays, claimDays },
    ...{ coverCents: row.coverCents, source: row.source },
    holdsFromOn: dayFromDate(row.holdsFromOn),
  };
}

/** A row of a shipment as everything here reads it. */
export function shipmentOf(row: ShipmentRow): ShipmentKept {
  const { crates, events, carrierRule, sale, ...shipment } = row;
  return {
    ...shipment,
    terms: carrierRule && termsOf(carrierRule),
    sale: sale && { number: sale.number, soldOn: dayFromDate(sale.soldOn) },
    boxes: crates,
    events: events.map((event) => ({ ...event, on: dayFromDate(event.on) })),
  };
}

/** A shipment by its id; null when there is none. */
export async function loadShipment(
  from: Prisma.TransactionClient,
  id: string,
): Promise<ShipmentKept | null> {
  const row = await from.shipment.findUnique({ where: { id }, select: shipmentColumns });
  return row && shipmentOf(row);
}

/**
 * How many numbers the drawing of a commission has; null where none is drawn, or more than one,
 * whose numbers would be mixed up.
 */
export async function countParts(
  from: Prisma.TransactionClient,
  commissionId: string | null,
): Promise<number | null> {
  if (commissionId === null) return null;
  const maps = await from.partMap.findMany({
    where: { job: { commissionId } },
    select: { job: { select: { _count: { select: { shapes: true } } } } },
  });
  const [only, ...more] = maps;
  return only && more.length === 0 ? only.job._count.shapes : null;
}
