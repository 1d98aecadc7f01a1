import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { voucherPdf } from '@/lib/documents/counter/voucher';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { readCredit } from '@/lib/vouchers/reads';
import { findCredit, listCredits, rollOfMonth } from '@/lib/vouchers/reads/list';
import { creditRefusalMessage, mostCreditCents } from '@/lib/vouchers/rules';
import { openCredit } from '@/lib/vouchers/writes';
import { openStoreCredit } from '@/lib/vouchers/writes/open-store-credit';
import { startAfresh } from '@/tests/helpers/database';
import { aPieceHere, doing, noon, openGallery, type OpenGallery } from '../sales/open-gallery';
import { balanceOf, lineOf, pieceOf, sell } from '../returns/sell';

let gallery: OpenGallery;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
});

function giving(over: Partial<Parameters<typeof openStoreCredit>[1]> = {}) {
  const given = { collectorId: null, amount: 4_500n, why: 'the wrong colour was sent' };
  return { requestKey: randomUUID(), ...given, ...over };
}

async function soldVoucher(cents: bigint): Promise<{ creditId: string; code: string }> {
  const opened = await inTransaction<{ creditId: string; code: string }, never>(async (tx) =>
    ok(
      await openCredit(tx, doing(gallery.clerk), {
        ...{ kind: 'voucher', collectorId: null, note: 'for Oona', expiresOn: null },
      }),
    ),
  );
  if (!opened.ok) throw new Error('A voucher can always be opened.');
  await sell(gallery, [lineOf('voucher', cents, { creditId: opened.value.creditId })]);
  return opened.value;
}

describe('a store credit by hand', () => {
  test('counts as a discount, is owed, and is found by its number however it is typed', async () => {
    const given = await openStoreCredit(doing(gallery.owner), giving());
    if (!given.ok) throw new Error('The owner may give one.');
    const { code } = given.value;
    expect(await Promise.all(['4800', '2210'].map(balanceOf))).toEqual([4_500n, -4_500n]);
    const typed = code.toLowerCase().replaceAll('-', ' ');
    expect(await readCredit(db(), typed)).toMatchObject({ code, balanceCents: 4_500n });
    expect((await findCredit(gallery.books, code))?.moves).toMatchObject([
      { amountCents: 4_500n, by: 'Ines Vale', paper: null },
    ]);
  });

  test.each<[string, 'owner' | 'clerk' | 'books', Partial<ReturnType<typeof giving>>]>([
    ['not_allowed', 'clerk', {}],
    ['not_allowed', 'books', {}],
    ['far_too_much', 'owner', { amount: mostCreditCents + 1n }],
    ['card_number_typed', 'owner', { why: 'back to 4111-1111-1111-1111' }],
    ['unknown_collector', 'owner', { collectorId: randomUUID() }],
  ])('%s for %s', async (code, who, over) => {
    const given = await openStoreCredit(doing(gallery[who]), giving(over));
    expect(given).toMatchObject({ ok: false, refusal: { code } });
    if (!given.ok) expect(creditRefusalMessage(given.refusal)).toMatch(/\.$/);
    expect(await db().credit.count()).toBe(0);
  });

  test('the same key twice is one credit', async () => {
    const once = giving();
    const first = await openStoreCredit(doing(gallery.owner), once);
    expect(await openStoreCredit(doing(gallery.owner), once)).toEqual(first);
    const other = await openStoreCredit(doing(gallery.owner), { ...once, amount: 1n });
    expect(other).toMatchObject({ refusal: { code: 'key_used_for_something_else' } });
  });
});

describe('a gift voucher', () => {
  test('the roll of the month ties to what the books owe', async () => {
    const { creditId, code } = await soldVoucher(10_000n);
    const names = { sku: 'SF-08-MW', title: 'Sword Fern' };
    const fern = await aPieceHere(gallery, { ...names, priceCents: 5_000n, here: 1 });
    await sell(gallery, [pieceOf(fern)], [{ kind: 'voucher', creditId }]);
    await openStoreCredit(doing(gallery.owner), giving());
    const roll = await rollOfMonth(gallery.books, '2026-11', 'America/Los_Angeles');
    expect(roll).toEqual([
      {
        ...{ kind: 'voucher', openingCents: 0n, soldCents: 10_000n, givenCents: 0n },
        ...{ usedCents: -5_400n, takenBackCents: 0n, closingCents: 4_600n },
      },
      {
        ...{ kind: 'store_credit', openingCents: 0n, soldCents: 0n, givenCents: 4_500n },
        ...{ usedCents: 0n, takenBackCents: 0n, closingCents: 4_500n },
      },
    ]);
    const owed = await Promise.all(['2200', '2210'].map(balanceOf));
    expect(owed).toEqual(roll.map((each) => -each.closingCents));
    const next = await rollOfMonth(gallery.books, '2026-12', 'America/Los_Angeles');
    expect(next.map((each) => each.openingCents)).toEqual([4_600n, 4_500n]);
    const listed = await listCredits(gallery.books, '');
    expect([listed.openCount, listed.openCents]).toEqual([2, 9_100n]);
    expect((await listCredits(gallery.books, 'oona')).credits.map((one) => one.code)).toEqual([
      code,
    ]);
  });

  test('is a paper with its number', async () => {
    const { code } = await soldVoucher(10_000n);
    const credit = await findCredit(gallery.clerk, code);
    if (!credit) throw new Error('It was sold.');
    const pdf = await voucherPdf(credit, await getGallery());
    expect(Buffer.from(pdf.subarray(0, 5)).toString()).toBe('%PDF-');
    expect(credit.firstCents).toBe(10_000n);
  });

  test('one that would run out within five years is never opened', async () => {
    const early = {
      kind: 'voucher',
      collectorId: null,
      note: '',
      expiresOn: '2027-11-20',
    } as const;
    const opening = inTransaction<unknown, never>(async (tx) =>
      ok(await openCredit(tx, { actor: gallery.clerk, at: noon }, early)),
    );
    await expect(opening).rejects.toThrow(/five years/);
  });
});
