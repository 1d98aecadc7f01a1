import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { daySheetPdf } from '@/lib/documents/counter/day-sheet';
import { cardWords, foundLines } from '@/lib/documents/counter/day-sheet-words';
import type { CountDrawerInput } from '@/lib/drawer/input';
import { listCounts, readInDrawer } from '@/lib/drawer/reads';
import { readDaySheet } from '@/lib/drawer/reads/day-sheet';
import { countDrawer, notePettyCash } from '@/lib/drawer/writes';
import { listJournal } from '@/lib/ledger/reads';
import { constraintOf } from '@/lib/platform/db/errors';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  doing,
  later,
  noon,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';
import { balanceOf, lineOf, pieceOf, sell } from '../returns/sell';

let gallery: OpenGallery;
let fern: TestPiece;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const names = { sku: 'SF-08-MW', title: 'Sword Fern' };
  fern = await aPieceHere(gallery, { ...names, priceCents: 10_000n, here: 5 });
});

/** So much in pieces of one cent's worth each: what is counted is what is said. */
function counting(cents: number, over: Partial<CountDrawerInput> = {}): CountDrawerInput {
  return {
    ...{ requestKey: randomUUID(), shownCents: BigInt(cents), pieces: { '1': cents } },
    ...{ floatCents: 5_000n, reason: '', cardTotalCents: null, ...over },
  };
}

async function outcome(answer: ReturnType<typeof countDrawer>): Promise<number | string> {
  const result = await answer;
  return result.ok ? result.value.number : result.refusal.code;
}

describe('a day’s end', () => {
  test('what is short is booked, the float stays, the rest goes to the bank', async () => {
    await sell(gallery, [pieceOf(fern)], [{ kind: 'cash' }]);
    const short = counting(10_700, { shownCents: 10_800n, reason: 'not known' });
    expect(await outcome(countDrawer(doing(gallery.clerk, later(60)), short))).toBe(1);
    const books = await Promise.all(['1000', '1030', '6900'].map(balanceOf));
    expect(books).toEqual([5_000n, 5_700n, 100n]);
  });

  test('the sheet tells what came in since the count before, and nothing else', async () => {
    await sell(gallery, [pieceOf(fern)], [{ kind: 'cash' }]);
    await countDrawer(doing(gallery.clerk, later(60)), counting(10_800));
    const { id: creditId } = await db().credit.create({
      data: { code: '2222-2222-2222', kind: 'voucher', createdAt: noon },
    });
    const after = { soldAt: later(120) };
    await sell(
      gallery,
      [pieceOf(fern), lineOf('voucher', 2_000n, { creditId })],
      [{ kind: 'cash' }],
      after,
    );
    await sell(gallery, [pieceOf(fern)], [{ kind: 'card' }], after);
    await sell(gallery, [pieceOf(fern)], [{ kind: 'cheque' }], after);
    const stamps = {
      requestKey: randomUUID(),
      way: 'out',
      amount: 1_850n,
      what: 'stamps',
    } as const;
    await notePettyCash(doing(gallery.clerk, later(150)), stamps);
    const inDrawer = Number(await readInDrawer(db()));
    expect(inDrawer).toBe(5_000 + 12_800 - 1_850);
    const counted = counting(inDrawer, { cardTotalCents: 10_000n });
    expect(await outcome(countDrawer(doing(gallery.clerk, later(180)), counted))).toBe(2);

    const sheet = await readDaySheet(gallery.books, 2);
    if (!sheet) throw new Error('The sheet of a count is kept.');
    expect(sheet.money.sheet).toEqual([
      { words: 'Float at open', cents: 5_000n },
      { words: 'Cash sales, with their tax', cents: 10_800n },
      { words: 'Cash for gift vouchers', cents: 2_000n },
      { words: 'Small cash, slip 1: stamps', cents: -1_850n },
    ]);
    expect(sheet.money.moneyIn).toMatchObject({ goods: 30_000n, tax: 2_400n, vouchers: 2_000n });
    expect(sheet.money.paid).toMatchObject({ cash: 12_800n, card: 10_800n, cheque: 10_800n });
    expect(sheet.money.cheques).toMatchObject([{ amountCents: 10_800n }]);
    expect(cardWords(sheet)).toMatch(/terminal says \$100\.00, and we took \$108\.00/);
    expect(foundLines(sheet.count).at(-1)).toEqual({ words: 'To the bank', cents: 10_950n });
    const pdf = await daySheetPdf(sheet, await getGallery());
    expect(Buffer.from(pdf.subarray(0, 5)).toString()).toBe('%PDF-');
    const journal = await listJournal(gallery.books, '2026-11', 1);
    expect(journal.entries.map((entry) => entry.paper)).toContainEqual({
      ...{ kind: 'drawer_count', number: 2 },
    });
  });

  test.each<[string, 'clerk' | 'maker' | 'books', Partial<CountDrawerInput>]>([
    ['not_allowed', 'maker', {}],
    ['not_allowed', 'books', {}],
    ['card_number_typed', 'clerk', { reason: '4111111111111111' }],
    ['drawer_moved', 'clerk', { shownCents: 1n }],
    ['reason_missing', 'clerk', { pieces: { '1': 10_799 } }],
    ['float_above_count', 'clerk', { floatCents: 10_801n }],
  ])('%s for %s, and nothing is written', async (code, who, over) => {
    await sell(gallery, [pieceOf(fern)], [{ kind: 'cash' }]);
    expect(await outcome(countDrawer(doing(gallery[who]), counting(10_800, over)))).toBe(code);
    expect(await listCounts(gallery.books)).toEqual([]);
    expect(await balanceOf('1000')).toBe(10_800n);
  });

  test('the same key twice is one count; two people at once are one count and a sentence', async () => {
    await sell(gallery, [pieceOf(fern)], [{ kind: 'cash' }]);
    const once = counting(10_800);
    const both = [gallery.clerk, gallery.second].map((actor) =>
      outcome(countDrawer(doing(actor, later(60)), once)),
    );
    expect(new Set(await Promise.all(both)).size).toBe(1);
    const others = [gallery.clerk, gallery.second].map((actor) =>
      outcome(countDrawer(doing(actor, later(90)), counting(5_000, { floatCents: 1_000n }))),
    );
    expect((await Promise.all(others)).filter((each) => each === 'drawer_moved')).toHaveLength(1);
    expect(await balanceOf('1000')).toBe(1_000n);
  });
});

describe('small cash', () => {
  const milk = { way: 'out', amount: 650n, what: 'milk' } as const;

  test.each([
    ['more_than_in_drawer', milk],
    ['card_number_typed', { ...milk, what: '4111 1111 1111 1111' }],
  ])('%s', async (code, asked) => {
    const answer = await notePettyCash(doing(gallery.clerk), {
      requestKey: randomUUID(),
      ...asked,
    });
    expect(answer).toMatchObject({ ok: false, refusal: { code } });
    expect(await db().pettyCash.count()).toBe(0);
  });

  test('cash that is put in comes back to the drawer', async () => {
    const coins = { requestKey: randomUUID(), way: 'in', amount: 4_000n, what: 'change' } as const;
    expect((await notePettyCash(doing(gallery.clerk), coins)).ok).toBe(true);
    expect(await Promise.all(['1000', '6300'].map(balanceOf))).toEqual([4_000n, -4_000n]);
  });
});

test('the database keeps a count as it was, and shares it out to the cent', async () => {
  await sell(gallery, [pieceOf(fern)], [{ kind: 'cash' }]);
  await countDrawer(doing(gallery.clerk, later(60)), counting(10_800));
  const knocks = [
    'update "DrawerCount" set "countedCents" = 1',
    'delete from "DrawerCount"',
    `insert into "DrawerCount" (id, "on", "expectedCents", "countedCents", pieces, "floatCents",
      "bankedCents", "staffId", at) values (gen_random_uuid(), now(), 5, 4, '{}', 4, 0,
      '${gallery.clerk.id}', now())`,
    `insert into "DrawerCount" (id, "on", "expectedCents", "countedCents", pieces, "floatCents",
      "bankedCents", "staffId", at) values (gen_random_uuid(), now(), 5, 5, '{}', 4, 0,
      '${gallery.clerk.id}', now())`,
  ];
  const met: (string | null)[] = [];
  for (const knock of knocks) {
    met.push(await sql(knock).then(() => 'nothing stood in the way', constraintOf));
  }
  expect(met).toEqual([
    ...['never_changed', 'never_changed'],
    ...['drawer_difference_is_explained', 'drawer_is_shared_out'],
  ]);
});
