import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { getTrialBalance, listJournal, listJournalOfMonth } from '@/lib/ledger/reads';
import { listCommissionMoney, listTaxHeld } from '@/lib/ledger/reads/held';
import { accounts, depositEntry, settlementEntry, type EntryToPost } from '@/lib/ledger/rules';
import { postEntries } from '@/lib/ledger/writes';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { decideCommissionSale } from '@/lib/sales/rules';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  openGallery,
  type OpenGallery,
  sellNow,
} from '../sales/open-gallery';
import { aCommissionSale } from '@/tests/rules/sales/a-commission-sale';

let gallery: OpenGallery;
let commissionId: string;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  commissionId = await aCommission();
  const fern = { sku: 'SF-08-MW', title: 'Sword Fern', priceCents: 10_000n, here: 5 };
  const piece = await aPieceHere(gallery, fern);

  await post('2026-10-30', depositEntry({ kind: 'card', amountCents: 500_000n, commissionId }));
  const beforeMidnight = new Date('2026-11-01T06:59:59Z');
  await sellNow(doing(gallery.clerk, beforeMidnight), aSale([{ piece, quantity: 1 }]));
  const afterMidnight = new Date('2026-11-01T07:00:00Z');
  await sellNow(doing(gallery.clerk, afterMidnight), aSale([{ piece, quantity: 2 }]));
  await handOver();
  await post(
    '2026-12-01',
    settlementEntry({ kind: 'cheque', amountCents: 100_000n, commissionId }),
  );
});

async function aCommission(): Promise<string> {
  const at = new Date('2026-09-01T18:00:00Z');
  const collector = await db().collector.create({ data: { name: 'Odile Sefton', createdAt: at } });
  const asked = { askedAt: at, askedOn: at, takenById: gallery.owner.id };
  const data = { collectorId: collector.id, title: 'Tidewater wall', ...asked };
  return (await db().commission.create({ data })).id;
}

async function post(on: EntryToPost['on'], postings: EntryToPost['postings']): Promise<void> {
  const paper = { memo: 'Paid', paper: 'CommissionPayment', paperId: randomUUID(), staffId: null };
  await inTransaction(async (tx) =>
    ok(await postEntries(tx, [{ on, at: new Date(`${on}T20:00:00Z`), ...paper, postings }])),
  );
}

/** 10,000.00 at 8 %, 5,000.00 of it paid before: 5,800.00 is owed from 20 November on. */
async function handOver(): Promise<void> {
  const money = { priceCents: 1_000_000n, paidCents: 500_000n };
  const parts = [{ name: 'State', ratePercent: '8' }];
  const decided = decideCommissionSale(aCommissionSale(money), parts, 'invoice');
  const where = { placeId: gallery.counterId, taxPlaceId: gallery.taxPlaceId, collectorId: null };
  const sale = { ...decided, ...where, channel: 'commission', commissionId } as const;
  const doer = doing(gallery.owner, new Date('2026-11-20T20:00:00Z'));
  await inTransaction(async (tx) =>
    ok(await recordSales(tx, doer, [{ ...sale, soldOn: '2026-11-20' }])),
  );
}

describe('the books', () => {
  test('a sale before midnight at the gallery belongs to October, one after it to November', async () => {
    const october = await listJournal(gallery.books, '2026-10', 1);
    const november = await listJournal(gallery.books, '2026-11', 1);
    expect(october.entries.map((entry) => [entry.on, entry.memo])).toEqual([
      ['2026-10-30', 'Paid'],
      ['2026-10-31', 'Sold: Sword Fern'],
    ]);
    expect(november.entries.map((entry) => [entry.on, entry.memo])).toEqual([
      ['2026-11-01', 'Sold: 2 × Sword Fern'],
      ['2026-11-20', 'Handed over: Tidewater wall'],
    ]);
    expect(november.debitCents).toBe(21_600n + 1_080_000n);
    expect(await listJournalOfMonth(gallery.books, '2026-11')).toEqual(november.entries);
  });

  test('an entry names its paper, its authorities and its commission', async () => {
    const { entries } = await listJournal(gallery.books, '2026-11', 1);
    expect(entries[0]?.paper).toEqual({ kind: 'receipt', number: 2 });
    expect(entries[0]?.postings.map((posting) => posting.authority)).toEqual([
      null,
      null,
      'Cedar Landing',
      'State',
    ]);
    expect(entries[1]?.postings[0]).toMatchObject({
      account: accounts.deposits,
      commissionNumber: 1,
    });
  });

  test.each([
    ['2026-10-30', { '1010': 500_000n, '2000': -500_000n }],
    [
      '2026-11-19',
      { '1000': 32_400n, '1010': 500_000n, '2000': -500_000n, '2100': -2_400n, '4000': -30_000n },
    ],
    [
      '2026-12-01',
      {
        ...{ '1000': 32_400n, '1010': 500_000n, '1020': 100_000n, '1100': 480_000n },
        ...{ '2100': -82_400n, '4000': -30_000n, '4010': -1_000_000n },
      },
    ],
  ] as const)('at the end of %s every account holds what it should', async (on, holds) => {
    const balance = await getTrialBalance(gallery.books, on);
    const held = balance.accounts.filter((account) => account.balanceCents !== 0n);
    expect(Object.fromEntries(held.map((each) => [each.code, each.balanceCents]))).toEqual(holds);
    expect(balance.sumCents).toBe(0n);
    expect(balance.accounts).toHaveLength(Object.keys(accounts).length);
  });

  test.each([
    ['2026-11-19', [{ number: 1, depositCents: 500_000n, owedCents: 0n }]],
    ['2026-11-20', [{ number: 1, depositCents: 0n, owedCents: 580_000n }]],
    ['2026-12-01', [{ number: 1, depositCents: 0n, owedCents: 480_000n }]],
    ['2026-10-29', []],
  ] as const)('on %s what is held and owed is told by commission', async (on, rows) => {
    const told = await listCommissionMoney(gallery.books, on);
    expect(told).toEqual(
      rows.map((row) => ({ title: 'Tidewater wall', collector: 'Odile Sefton', ...row })),
    );
  });

  test('tax is held by authority, the month apart from all there is', async () => {
    expect(await listTaxHeld(gallery.books, '2026-11')).toEqual([
      { authority: 'Cedar Landing', monthCents: 300n, heldCents: 450n },
      { authority: 'State', monthCents: 81_300n, heldCents: 81_950n },
    ]);
  });

  test('an entry that does not balance is not even sent', async () => {
    const { bank } = accounts;
    const lopsided = [
      { account: bank, amountCents: 5n },
      { account: bank, amountCents: -4n },
    ];
    await expect(post('2026-12-02', lopsided)).rejects.toThrow('sum to zero');
  });

  test('nobody reads them without the right', async () => {
    await expect(listJournal(gallery.clerk, '2026-11', 1)).rejects.toThrow();
    await expect(getTrialBalance(gallery.maker, '2026-11-30')).rejects.toThrow();
  });
});
