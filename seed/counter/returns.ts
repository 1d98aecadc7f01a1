import { addDays, dateFromDay, instantOf, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok } from '@/lib/platform/result';
import { takeBack } from '@/lib/returns/writes';
import { readTaxParts } from '@/lib/sales/reads';
import { priceSlip, type LineToPrice } from '@/lib/sales/rules/pricing';
import { recordSales, type SaleToRecord } from '@/lib/sales/writes/record-sales';
import { openCredit } from '@/lib/vouchers/writes';
import { openStoreCredit } from '@/lib/vouchers/writes/open-store-credit';
import { gallery } from '@/seed/scenario/gallery';
import {
  storeCreditGiven,
  takenBack,
  vouchersSold,
  type VoucherSold,
} from '@/seed/scenario/returns';
import type { SetUp } from '@/seed/set-up';

type Play = { today: Day; setUp: SetUp; collectors: ReadonlyMap<string, string> };

/** Sells some gift vouchers, uses one of them, takes a few pieces back, and gives a credit. */
export async function playReturns(play: Play): Promise<void> {
  for (const voucher of vouchersSold) await sellVoucher(play, voucher);
  for (const each of takenBack) await takeOneBack(play, each);
  const doer = { actor: play.setUp.owner, at: eveningOf(play, storeCreditGiven.daysAgo) };
  const { amountCents: amount, why } = storeCreditGiven;
  const given = await openStoreCredit(doer, {
    requestKey: newId(),
    collectorId: null,
    amount,
    why,
  });
  invariant(given.ok, 'The demo’s store credit is given.');
}

function eveningOf({ today }: Play, daysAgo: number): Date {
  return instantOf(addDays(today, -daysAgo), '16:40', gallery.timeZone);
}

async function sellVoucher(play: Play, { cents, forWhom, daysAgo, used }: VoucherSold) {
  const doer = { actor: play.setUp.seller, at: eveningOf(play, daysAgo) };
  const opened = await inTransaction<string, never>(async (tx) => {
    const voucher = { kind: 'voucher', collectorId: null, note: forWhom, expiresOn: null } as const;
    const { creditId } = await openCredit(tx, doer, voucher);
    return ok(creditId);
  });
  invariant(opened.ok, 'The demo’s voucher is opened.');
  const creditId = opened.value;
  const title = 'Gift voucher';
  const line = { ...lineOf(title, cents), kind: 'voucher', taxable: false, creditId } as const;
  await sell(play, daysAgo, { line: { ...line, taxKind: 'none' }, paidBy: { kind: 'card' } });
  if (!used) return;
  const bought = { ...lineOf(used.title, used.cents), kind: 'typed', taxable: true } as const;
  await sell(play, used.daysAgo, { line: bought, paidBy: { kind: 'voucher', creditId } });
}

function lineOf(title: string, unitPriceCents: bigint) {
  const names = { skuId: null, designId: null, title, what: '', quantity: 1 };
  return { ...names, unitPriceCents, unitCostCents: null };
}

type Paid = Pick<SaleToRecord['tenders'][number], 'kind' | 'creditId'>;

async function sell(play: Play, daysAgo: number, sold: { line: LineToPrice; paidBy: Paid }) {
  const { setUp, today } = play;
  const soldOn = addDays(today, -daysAgo);
  const doer = { actor: setUp.seller, at: eveningOf(play, daysAgo) };
  const { parts } = await readTaxParts(setUp.taxPlaceId, soldOn);
  const priced = priceSlip([sold.line], parts, 'invoice');
  const amountCents = priced.totalCents;
  const tender = { ...sold.paidBy, amountCents, givenCents: null, reference: '' };
  await inTransaction<null, never>(async (tx) => {
    const { floorId: placeId, taxPlaceId } = setUp;
    const sale = { ...priced, placeId, taxPlaceId, tenders: [tender], soldOn };
    await recordSales(tx, doer, [{ ...sale, channel: 'counter', collectorId: null }]);
    return ok(null);
  });
}

async function takeOneBack(play: Play, back: (typeof takenBack)[number]): Promise<void> {
  const day = dateFromDay(addDays(play.today, -back.soldDaysAgo));
  const sale = await db().sale.findFirst({
    where: {
      ...{ soldOn: { lte: day }, channel: 'counter', returns: { none: {} } },
      lines: { some: { kind: 'piece', sku: { grade: 'first', making: { not: 'edition' } } } },
    },
    orderBy: [{ soldOn: 'desc' }, { number: 'desc' }],
    select: {
      number: true,
      lines: { where: { kind: 'piece' }, orderBy: { position: 'asc' }, select: { id: true } },
    },
  });
  const line = sale?.lines[0];
  if (!sale || !line) return;
  const { kind, how, feePercent, reason, to } = back;
  const doer = { actor: play.setUp.seller, at: eveningOf(play, back.daysAgo) };
  const taken = await takeBack(doer, {
    ...{ requestKey: newId(), saleNumber: sale.number, kind, how, feePercent, reason },
    ...{ refunds: [], lines: [{ lineId: line.id, pieces: 1, numbers: [], to, flaw: '' }] },
  });
  invariant(taken.ok, 'The demo’s piece is taken back.');
}
