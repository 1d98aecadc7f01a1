import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { listFeesOf } from '@/lib/collectors/reads/fees';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { strikeOut } from '@/lib/returns/writes';
import { payFeesInput } from '@/lib/sales/input/referral-fee';
import { payReferralFee, recordReferralFee } from '@/lib/sales/writes/referral-fee';
import { sql, startAfresh } from '@/tests/helpers/database';
import { aPieceHere, aSale, doing, openGallery, sellNow, type OpenGallery } from './open-gallery';

let gallery: OpenGallery;
let designer: string;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const data = { kind: 'designer' as const, name: 'Halloran & Vane', createdAt: new Date(0) };
  designer = (await db().collector.create({ data })).id;
});

/** Sells a piece of 480.00 and notes what the designer earned by it. */
async function earned(percent = '15', sku = 'TS-10-CI') {
  const piece = { sku, title: `Tern ${sku}`, priceCents: 48_000n, here: 1 };
  const tile = await aPieceHere(gallery, piece);
  const sold = await sellNow(doing(gallery.clerk), aSale([{ piece: tile, quantity: 1 }]));
  if (!sold.ok) throw new Error(sold.refusal.code);
  const { saleId, number: saleNumber } = sold.value;
  const fee = { saleId, saleNumber, percent, netCents: 48_000n, on: '2026-11-20' } as const;
  await inTransaction(async (tx) =>
    ok(await recordReferralFee(tx, doing(gallery.clerk), { ...fee, collectorId: designer })),
  );
  return saleNumber;
}

const fees = async () => listFeesOf(gallery.books, designer, '2026-11-20');
async function payment(over: Record<string, unknown> = {}) {
  const feeIds = (await fees()).fees.map(({ id }) => id);
  return payFeesInput.parse({
    ...{ requestKey: randomUUID(), collectorId: designer, feeIds, how: 'cheque' },
    ...{ paidOn: '2026-11-20', ...over },
  });
}
const balances = () =>
  sql(`select "accountCode" as code, sum("amountCents")::int as cents from "Posting"
    where "accountCode" in ('1030', '2300', '6100') group by 1 order by 1`);

test('a fee is owed from the sale on, with an entry of its own', async () => {
  const receipt = await earned();
  expect(await fees()).toMatchObject({
    ...{ earnedCents: 7_200n, paidCents: 0n, owedCents: 7_200n, paidThisYearCents: 0n },
    fees: [{ receipt, percent: '15', amountCents: 7_200n, paidOn: null, takenBackCents: 0n }],
  });
  expect(await balances()).toEqual([
    { code: '2300', cents: -7_200 },
    { code: '6100', cents: 7_200 },
  ]);
});

test('a fee that comes to nothing is not written', async () => {
  await earned('0.001');
  expect((await fees()).fees).toEqual([]);
  expect(await balances()).toEqual([]);
});

describe('what comes back', () => {
  async function strike(saleNumber: number): Promise<void> {
    const struck = { requestKey: randomUUID(), saleNumber, reason: 'The wrong piece' };
    const back = await strikeOut(doing(gallery.owner), struck);
    if (!back.ok) throw new Error(back.refusal.code);
  }

  test('takes its fee with it, and there is nothing to pay', async () => {
    await strike(await earned());
    expect(await fees()).toMatchObject({
      ...{ earnedCents: 0n, paidCents: 0n, owedCents: 0n },
      fees: [{ amountCents: 7_200n, takenBackCents: 7_200n }],
    });
    expect(await payReferralFee(doing(gallery.owner), await payment())).toMatchObject({
      refusal: { code: 'fee_taken_back' },
    });
  });

  test('after its fee was paid is owed by the designer', async () => {
    const receipt = await earned();
    await payReferralFee(doing(gallery.owner), await payment());
    await strike(receipt);
    expect(await fees()).toMatchObject({ earnedCents: 0n, paidCents: 7_200n, owedCents: -7_200n });
  });
});

describe('paying', () => {
  test('several at once writes each into the books', async () => {
    await earned('15', 'TS-10-CI');
    await earned('10', 'TS-10-MW');
    expect(await payReferralFee(doing(gallery.owner), await payment())).toEqual({
      ok: true,
      value: { paid: '12000' },
    });
    expect(await balances()).toEqual([
      { code: '1030', cents: -12_000 },
      { code: '2300', cents: 0 },
      { code: '6100', cents: 12_000 },
    ]);
    expect(await fees()).toMatchObject({ owedCents: 0n, paidThisYearCents: 12_000n });
  });

  test('twice by the same form pays once; of two forms at once one pays', async () => {
    await earned();
    const form = await payment();
    const again = await payment();
    const answers = await Promise.all(
      [form, form, again].map((each) => payReferralFee(doing(gallery.owner), each)),
    );
    const no = answers.filter((each) => !each.ok);
    expect(no.length).toBeGreaterThanOrEqual(1);
    for (const each of no) expect(each).toMatchObject({ refusal: { code: 'fee_paid_already' } });
    expect(await balances()).toContainEqual({ code: '1030', cents: -7_200 });
  });

  test('is the owner’s, of fees that were earned, by a day that has come', async () => {
    await earned();
    const codes = await Promise.all([
      payReferralFee(doing(gallery.clerk), await payment({ paidOn: '2030-01-01' })),
      payReferralFee(doing(gallery.owner), await payment({ paidOn: '2030-01-01' })),
      payReferralFee(doing(gallery.owner), await payment({ collectorId: randomUUID() })),
      payReferralFee(doing(gallery.owner), await payment({ paidOn: '2026-11-19' })),
    ]);
    expect(codes.map((each) => (each.ok ? 'paid' : each.refusal.code))).toEqual([
      ...['not_allowed', 'paid_in_the_future', 'unknown_fee', 'paid_before_earned'],
    ]);
    expect(await fees()).toMatchObject({ paidCents: 0n });
  });
});

test('the database itself takes one fee of a sale, and none of nothing', async () => {
  await earned();
  const copy = (cents: string, sale: string) =>
    sql(`insert into "ReferralFee" (id, "saleId", "collectorId", percent, "amountCents", "entryId")
      select gen_random_uuid(), ${sale}, "collectorId", percent, ${cents}, "entryId"
      from "ReferralFee"`);
  await expect(copy('100', '"saleId"')).rejects.toThrow('ReferralFee_saleId_key');
  await expect(copy('0', '"saleId"')).rejects.toThrow('referral_fee_is_positive');
});
