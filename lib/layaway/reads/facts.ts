import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { invariant } from '@/lib/platform/invariant';
import { getGallery } from '@/lib/platform/settings';
import { readPiecesForSale } from '@/lib/sales/reads';
import type { PieceForSale } from '@/lib/sales/rules';
import { readTaxSetting } from '@/lib/tax/reads';
import type { TaxSetting } from '@/lib/tax/rules/treatment';
import {
  layawayMoney,
  layawayStanding,
  priceLayaway,
  type AgreedLine,
  type Due,
  type LayawayMoney,
  type LayawayStanding,
} from '../rules';

/** Money that came in for a layaway, by its receipt; `backCents` of it was given back. */
export type LayawayPayment = { receipt: number; paidOn: Day; cents: Cents; backCents: Cents };

/** A layaway with everything that is known of it at a moment. */
export type LayawayFacts = {
  id: string;
  number: number;
  collector: { id: string; name: string; phone: string | null; email: string | null };
  taxPlaceId: string;
  agreedOn: Day;
  finalOn: Day;
  at: Date;
  /** As agreed: before tax, and with the tax of that day. */
  netCents: Cents;
  agreedTotalCents: Cents;
  terms: string;
  staffId: string;
  endedAt: Date | null;
  endedWhy: string;
  /** The receipt of its hand-over. */
  handedOverBy: number | null;
  lines: AgreedLine[];
  dues: Due[];
  payments: LayawayPayment[];
  money: LayawayMoney;
  standing: LayawayStanding;
};

const select = {
  ...{ id: true, number: true, taxPlaceId: true, agreedOn: true, finalOn: true, at: true },
  ...{ netCents: true, totalCents: true, terms: true, staffId: true },
  ...{ endedAt: true, endedWhy: true },
  collector: { select: { id: true, name: true, phone: true, email: true } },
  lines: { orderBy: { position: 'asc' } },
  dues: { orderBy: { position: 'asc' }, select: { dueOn: true, amountCents: true } },
  holds: {
    where: { endedAt: null },
    select: { id: true, skuId: true, editionNumber: true },
    orderBy: { number: 'asc' },
  },
  saleLines: {
    select: {
      netCents: true,
      sale: { select: { number: true, soldOn: true } },
      returned: { select: { netCents: true } },
    },
    orderBy: { sale: { number: 'asc' } },
  },
  tenders: { select: { sale: { select: { number: true } } }, take: 1 },
} as const satisfies Prisma.LayawaySelect;

type Row = Prisma.LayawayGetPayload<{ select: typeof select }>;

/** Which layaways, in which order, and how many at most. */
export type LayawaysWanted = {
  where: Prisma.LayawayWhereInput;
  orderBy: Prisma.LayawayOrderByWithRelationInput[];
  most: number;
};

/**
 * Layaways with their money as it stands on a day: tax as it is then for those that run on, and as
 * agreed for those that have ended. Asks nobody for leave.
 */
export async function readLayaways(
  from: Prisma.TransactionClient,
  { where, orderBy, most }: LayawaysWanted,
  todayOn: Day,
): Promise<LayawayFacts[]> {
  const rows = await from.layaway.findMany({ where, orderBy, take: most, select });
  if (rows.length === 0) return [];
  const { lengthUnit, counterId: placeId, roundTaxBy } = await getGallery(from);
  const skuIds = [...new Set(rows.flatMap((row) => row.lines.map((line) => line.skuId)))];
  const pieces = await readPiecesForSale(from, skuIds, { placeId, on: todayOn, lengthUnit });
  const settings = new Map<string, TaxSetting>();
  for (const { taxPlaceId } of rows) {
    if (settings.has(taxPlaceId)) continue;
    settings.set(taxPlaceId, await readTaxSetting(from, { taxPlaceId, on: todayOn }));
  }
  return rows.map((row) => {
    const setting = settings.get(row.taxPlaceId);
    invariant(setting, 'Every tax place of a layaway was read.');
    return factsOf(row, { pieces, setting, roundTaxBy, todayOn });
  });
}

type Around = {
  pieces: ReadonlyMap<string, PieceForSale>;
  setting: TaxSetting;
  roundTaxBy: 'invoice' | 'item';
  todayOn: Day;
};

function factsOf(row: Row, { pieces, setting, roundTaxBy, todayOn }: Around): LayawayFacts {
  const { id, number, collector, taxPlaceId, at, netCents, terms, staffId, endedAt, endedWhy } =
    row;
  const lines = linesOf(row, pieces);
  const dues = row.dues.map((due) => ({ ...due, dueOn: dayFromDate(due.dueOn) }));
  const payments = paymentsOf(row);
  const isEnded = endedAt !== null;
  const totalCents = isEnded ? row.totalCents : priceLayaway(lines, setting, roundTaxBy).totalCents;
  const paidCents = sumCents(payments.map(({ cents, backCents }) => cents - backCents));
  const money = layawayMoney({ totalCents, paidCents, dues, todayOn });
  const handedOverBy = row.tenders[0]?.sale.number ?? null;
  return {
    ...{ id, number, collector, taxPlaceId, at, netCents, terms, staffId, endedAt, endedWhy },
    ...{ agreedOn: dayFromDate(row.agreedOn), finalOn: dayFromDate(row.finalOn) },
    ...{ agreedTotalCents: row.totalCents, handedOverBy, lines, dues, payments, money },
    standing: layawayStanding({ isEnded, isHandedOver: handedOverBy !== null }, money),
  };
}

function paymentsOf(row: Row): LayawayPayment[] {
  return row.saleLines.map(({ sale, netCents, returned }) => ({
    receipt: sale.number,
    paidOn: dayFromDate(sale.soldOn),
    cents: netCents,
    backCents: sumCents(returned.map((back) => back.netCents)),
  }));
}

function linesOf(row: Row, pieces: ReadonlyMap<string, PieceForSale>): AgreedLine[] {
  return row.lines.map((line) => {
    const piece = pieces.get(line.skuId);
    invariant(piece, 'A piece that was put away is in the catalogue.');
    const { skuId, quantity, editionNumber, unitPriceCents, discountCents, discountReason } = line;
    return {
      ...{ skuId, quantity, editionNumber, unitPriceCents, discountCents, discountReason },
      ...{ designId: piece.designId, title: piece.title, what: piece.what },
      ...{ weightG: piece.weightG, unitCostCents: piece.costCents, givenById: row.staffId },
      holdIds: row.holds
        .filter((hold) => hold.skuId === skuId && hold.editionNumber === editionNumber)
        .map((hold) => hold.id),
    };
  });
}
