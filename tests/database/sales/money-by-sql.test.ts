import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { saleEntry } from '@/lib/ledger/rules/sale-entry';
import { postEntry } from '@/lib/ledger/writes';
import { db } from '@/lib/platform/db/client';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok } from '@/lib/platform/result';
import { priceSlip, type LineToPrice } from '@/lib/sales/rules/pricing';
import type { Tender } from '@/lib/sales/rules/tenders';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  doing,
  noon,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from './open-gallery';
import { ruleMetBy } from './rule-met';

let gallery: OpenGallery;
let fern: TestPiece;
let creditId: string;
let layawayId: string;
/** Two ferns at 100.00 with 8 % tax: 150.00 in cash, 66.00 still owed. */
let sale: { saleId: string; lineId: string; cashId: string; owedId: string };

const parts = [
  { name: 'State', ratePercent: '6.5' },
  { name: 'Cedar Landing', ratePercent: '1.5' },
];
const words = { designId: null, title: 'A line', what: '', unitCostCents: null };

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  fern = await aPieceHere(gallery, {
    ...{ sku: 'SF-08', title: 'Sword Fern', priceCents: 10_000n, here: 9 },
  });
  const collector = await db().collector.create({
    data: { name: 'Odile Sefton', createdAt: noon },
  });
  const credit = { code: 'FOGHORN7', kind: 'voucher', createdAt: noon } as const;
  creditId = (await db().credit.create({ data: credit })).id;
  const layaway = {
    ...{ collectorId: collector.id, taxPlaceId: gallery.taxPlaceId, staffId: gallery.clerk.id },
    ...{ agreedOn: noon, finalOn: new Date('2027-02-20'), at: noon, terms: 'as agreed' },
    ...{ downCents: 2_500n, netCents: 10_000n, totalCents: 10_800n },
  };
  layawayId = (await db().layaway.create({ data: layaway })).id;
  const ferns = aLine({ kind: 'piece', skuId: fern.skuId, quantity: 2, taxable: true });
  const tenders = [aTender('cash', 15_000n), aTender('on_account', 6_600n)];
  const recorded = await inTransaction(async (tx) => ok(await record(tx, [ferns], tenders)));
  invariant(recorded.ok, 'The ferns are here.');
  const { saleId, lineIds } = recorded.value;
  const [cash, owed] = await db().tender.findMany({
    where: { saleId },
    orderBy: { position: 'asc' },
  });
  invariant(lineIds[0] && cash && owed, 'The sale has its line and its tenders.');
  sale = { saleId, lineId: lineIds[0], cashId: cash.id, owedId: owed.id };
  const voucher = aLine({ kind: 'voucher', unitPriceCents: 5_000n, creditId, taxKind: 'none' });
  const paid = aLine({ kind: 'layaway_payment', unitPriceCents: 2_500n, layawayId });
  await inTransaction(async (tx) => ok(await record(tx, [voucher], [aTender('card', 5_000n)])));
  await inTransaction(async (tx) => ok(await record(tx, [paid], [aTender('card', 2_500n)])));
});

function aLine(line: Partial<LineToPrice> & Pick<LineToPrice, 'kind'>): LineToPrice {
  const most = { skuId: null, quantity: 1, unitPriceCents: 10_000n, taxable: false };
  return { ...words, ...most, ...line };
}

function aTender(kind: Tender['kind'], amountCents: bigint, more: Partial<Tender> = {}): Tender {
  return { kind, amountCents, givenCents: null, reference: '', ...more };
}

async function record(tx: Tx, lines: readonly LineToPrice[], tenders: Tender[]) {
  const priced = priceSlip(lines, parts, 'invoice');
  const { counterId: placeId, taxPlaceId } = gallery;
  const where = { channel: 'counter', placeId, taxPlaceId, collectorId: null } as const;
  const decided = { ...priced, ...where, tenders, soldOn: '2026-11-20' } as const;
  const [recorded] = await recordSales(tx, doing(gallery.clerk), [decided]);
  invariant(recorded, 'It was recorded.');
  return recorded;
}

type Answer = {
  pieces?: number;
  netCents?: bigint;
  taxCents?: bigint;
  feeCents?: bigint;
  authority?: string;
  tenderId?: string;
  refundCents?: bigint;
};

/** A return by hand: one fern for its 108.00, in cash. */
async function giveBack(tx: Tx, answer: Answer = {}): Promise<void> {
  const { pieces = 1, netCents = 10_000n, taxCents = 800n, feeCents = 0n } = answer;
  const totalCents = netCents + taxCents - feeCents;
  const paper = randomUUID();
  const entryId = await postEntry(tx, {
    ...{ on: '2026-11-21', at: noon, memo: 'Brought back', paper: 'GoodsReturn', paperId: paper },
    staffId: gallery.clerk.id,
    postings: [
      { account: '4900', amountCents: 100n },
      { account: '1000', amountCents: -100n },
    ],
  });
  const { id: returnId } = await tx.goodsReturn.create({
    data: {
      ...{ id: paper, saleId: sale.saleId, kind: 'returned', reason: 'changed her mind' },
      ...{ netCents, taxCents, feeCents, totalCents, returnedOn: noon, at: noon, entryId },
      staffId: gallery.clerk.id,
    },
  });
  const line = { returnId, saleLineId: sale.lineId, quantity: pieces, netCents, taxCents };
  await tx.goodsReturnLine.create({ data: { ...line, to: 'nothing' } });
  const { authority = 'State' } = answer;
  await tx.goodsReturnTax.create({ data: { returnId, authority, taxCents } });
  const { tenderId = sale.cashId, refundCents: amountCents = totalCents } = answer;
  await tx.refund.create({ data: { returnId, tenderId, kind: 'cash', amountCents } });
}

async function settle(tx: Tx, amountCents: bigint): Promise<void> {
  const postings = saleEntry({ lines: [], taxes: [], tenders: [{ kind: 'cash', amountCents }] });
  const entryId = await postEntry(tx, {
    ...{ on: '2026-11-21', at: noon, memo: 'Paid', paper: 'SettlementPayment' },
    ...{ paperId: sale.saleId, staffId: gallery.clerk.id },
    postings: [...postings, { account: '1100', amountCents: -amountCents }],
  });
  const paid = { saleId: sale.saleId, amountCents, kind: 'card', receivedOn: noon } as const;
  await tx.settlementPayment.create({
    data: { ...paid, staffId: gallery.clerk.id, at: noon, entryId },
  });
}

async function lineByHand(tx: Tx, data: Record<string, bigint>): Promise<unknown> {
  const line = { saleId: sale.saleId, position: 9, kind: 'typed', title: 'A line' } as const;
  const sums = { unitPriceCents: 900n, netCents: 900n, taxCents: 0n, ...data };
  return tx.saleLine.create({ data: { ...line, what: '', quantity: 1, taxable: false, ...sums } });
}

test.each<[string, string, (tx: Tx) => Promise<unknown>]>([
  [
    'a line that is not its price less discounts',
    'sale_line_is_price_less_discounts',
    (tx) => lineByHand(tx, { netCents: 800n }),
  ],
  [
    'more taxed than was charged',
    'sale_line_is_taxed_at_most_whole',
    (tx) => lineByHand(tx, { taxableCents: 901n }),
  ],
  [
    'a discount under a line that is done',
    'sale_adds_up',
    (tx) =>
      tx.saleDiscount.create({
        data: {
          ...{ lineId: sale.lineId, kind: 'line', reason: 'a kindness', amountCents: 100n },
          givenById: gallery.owner.id,
        },
      }),
  ],
  [
    'a discount without a reason',
    'discount_says_why',
    (tx) =>
      tx.saleDiscount.create({
        data: {
          ...{ lineId: sale.lineId, kind: 'line', reason: ' ', amountCents: 100n },
          givenById: gallery.owner.id,
        },
      }),
  ],
  [
    'a voucher pays more than is on it',
    'credit_never_below_zero',
    (tx) => record(tx, [aLine({ kind: 'typed' })], [aTender('voucher', 10_000n, { creditId })]),
  ],
  [
    'a voucher pays without its number',
    'tender_names_its_credit',
    (tx) => record(tx, [aLine({ kind: 'typed' })], [aTender('voucher', 10_000n)]),
  ],
  [
    'what is on a voucher is written over',
    'balance_only_by_movement',
    (tx) => tx.credit.update({ where: { id: creditId }, data: { balanceCents: 99_999n } }),
  ],
  [
    'a voucher begins with money that nobody paid',
    'balance_only_by_movement',
    (tx) =>
      tx.credit.create({
        data: { code: 'SEAWRACK', kind: 'voucher', createdAt: noon, balanceCents: 100n },
      }),
  ],
  [
    'a layaway pays more than was paid for it',
    'deposit_is_used_once',
    (tx) =>
      record(
        tx,
        [aLine({ kind: 'typed', unitPriceCents: 2_501n })],
        [aTender('layaway', 2_501n, { layawayId })],
      ),
  ],
  [
    'more comes back than was sold',
    'return_is_covered',
    (tx) => giveBack(tx, { pieces: 3, netCents: 100n, taxCents: 8n }),
  ],
  [
    'the whole comes back a cent of tax short',
    'return_is_covered',
    (tx) => giveBack(tx, { pieces: 2, netCents: 13_000n, taxCents: 1_299n }),
  ],
  [
    'more tax than this authority had',
    'return_is_covered',
    (tx) => giveBack(tx, { authority: 'Cedar Landing' }),
  ],
  [
    'more goes back in cash than was paid in cash',
    'refund_is_covered',
    (tx) => giveBack(tx, { netCents: 14_300n }),
  ],
  ['a return that does not add up', 'return_adds_up', (tx) => giveBack(tx, { refundCents: 1n })],
  [
    'a fee above the price',
    'return_adds_up',
    (tx) => giveBack(tx, { feeCents: 10_001n, refundCents: 799n }),
  ],
  [
    'a refund of nothing',
    'refund_is_positive',
    (tx) => giveBack(tx, { netCents: 0n, taxCents: 0n, refundCents: 0n }),
  ],
  [
    'more is settled than is owed',
    'settled_at_most_what_is_owed',
    async (tx) => {
      await settle(tx, 6_000n);
      await settle(tx, 601n);
    },
  ],
  [
    'a drawer that differs without a word',
    'drawer_difference_is_explained',
    (tx) =>
      tx.drawerCount.create({
        data: {
          ...{ on: noon, at: noon, staffId: gallery.clerk.id, pieces: {} },
          ...{ expectedCents: 100n, countedCents: 99n, floatCents: 99n, bankedCents: 0n },
        },
      }),
  ],
  [
    'a drawer that is shared out wrongly',
    'drawer_is_shared_out',
    (tx) =>
      tx.drawerCount.create({
        data: {
          ...{ on: noon, at: noon, staffId: gallery.clerk.id, pieces: {} },
          ...{ expectedCents: 100n, countedCents: 100n, floatCents: 20n, bankedCents: 79n },
        },
      }),
  ],
])('%s: %s', async (_label, rule, work) => {
  expect(await ruleMetBy(work)).toBe(rule);
});

test('and nothing of all that was kept', async () => {
  expect(await db().goodsReturn.count()).toBe(0);
  expect(await db().settlementPayment.count()).toBe(0);
  expect(await db().credit.findMany({ select: { code: true, balanceCents: true } })).toEqual([
    { code: 'FOGHORN7', balanceCents: 5_000n },
  ]);
});

test('what is covered goes through, to the last cent', async () => {
  const done = await inTransaction(async (tx) => {
    await giveBack(tx);
    await settle(tx, 6_600n);
    const paid = aTender('layaway', 2_500n, { layawayId });
    const voucher = aTender('voucher', 5_000n, { creditId });
    await record(tx, [aLine({ kind: 'typed', unitPriceCents: 7_500n })], [paid, voucher]);
    return ok(true);
  });
  expect(done.ok).toBe(true);
});
