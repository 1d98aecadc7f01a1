import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addressLine } from '@/lib/collectors/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';

/** What is known when a shipment begins: what it is for, and where it is likely to go. */
export type Beginning = {
  commissionId: string | null;
  saleNumber: number | null;
  /** `the commission “Fern bank”`, `receipt 1207`; empty for neither. */
  forWords: string;
  toName: string;
  toAddress: string;
  toPhone: string;
  insuredCents: Cents;
};

const nothingKnown: Beginning = {
  ...{ commissionId: null, saleNumber: null, forWords: '' },
  ...{ toName: '', toAddress: '', toPhone: '', insuredCents: 0n },
};

/** What is known of a shipment to begin, by a commission’s number or a receipt’s; else nothing. */
export async function readBeginning(
  actor: Actor,
  of: { commissionNumber: number | null; saleNumber: number | null },
): Promise<Beginning> {
  assertAllowed(actor, 'sending.do');
  if (of.commissionNumber !== null) return ofCommission(of.commissionNumber);
  return of.saleNumber === null ? nothingKnown : ofSale(of.saleNumber);
}

const collectorColumns = {
  select: {
    ...{ name: true, phone: true, street: true, city: true, state: true, postcode: true },
  },
} as const;

async function ofCommission(number: number): Promise<Beginning> {
  const row = await db().commission.findUnique({
    where: { number },
    select: { id: true, title: true, siteAddress: true, collector: collectorColumns },
  });
  if (!row) return nothingKnown;
  const { collector } = row;
  return {
    ...nothingKnown,
    ...{ commissionId: row.id, forWords: `the commission “${row.title}”` },
    ...{ toName: collector.name, toPhone: collector.phone ?? '' },
    toAddress: row.siteAddress ?? addressLine(collector) ?? '',
  };
}

async function ofSale(number: number): Promise<Beginning> {
  const row = await db().sale.findUnique({
    where: { number },
    select: {
      ...{ deliverTo: true, netCents: true, giftTo: true },
      collector: { select: { ...collectorColumns.select, erasedAt: true } },
    },
  });
  if (!row) return nothingKnown;
  const { collector } = row;
  const isStruck = collector?.erasedAt !== null && collector !== null;
  return {
    ...nothingKnown,
    ...{ saleNumber: number, forWords: `receipt ${number}`, insuredCents: row.netCents },
    toName: row.giftTo || (collector?.name ?? ''),
    toAddress: isStruck ? '' : row.deliverTo,
    toPhone: collector?.phone ?? '',
  };
}

/** A sale that is to be sent, and of which no shipment was begun. */
export type SaleToSend = { number: number; soldOn: Day; toName: string };

/** The sales that are to be sent and are not on their way, the newest first; at most 40. */
export async function listSalesToSend(actor: Actor): Promise<SaleToSend[]> {
  assertAllowed(actor, 'sending.do');
  const rows = await db().sale.findMany({
    where: { delivery: 'sent', shipments: { none: {} }, proof: null },
    select: { number: true, soldOn: true, collector: { select: { name: true } } },
    orderBy: { number: 'desc' },
    take: 40,
  });
  return rows.map(({ number, soldOn, collector }) => ({
    ...{ number, soldOn: dayFromDate(soldOn), toName: collector?.name ?? 'somebody' },
  }));
}
