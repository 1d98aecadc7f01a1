import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { bookCountInput } from '@/lib/stock/input/counts';
import { findCount, listCounts, type CountSheet } from '@/lib/stock/reads/moves/counts';
import { bringIntoStock } from '@/lib/stock/writes';
import { beginCount, bookCount, leaveCount } from '@/lib/stock/writes/count';
import { scanInCount, setCounted, unseeNumber } from '@/lib/stock/writes/scan';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  later,
  openGallery,
  sellNow,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';

let gallery: OpenGallery;
let tern: TestPiece;
let fern: TestPiece;
let heron: TestPiece;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const of = (sku: string, title: string, here: number) =>
    aPieceHere(gallery, { sku, title, priceCents: 10_000n, here });
  tern = await of('TS-10-CI', 'Tern over Shoals', 3);
  fern = await of('KF-08-MW', 'Kelp Fern', 2);
  heron = await of('HR-14-MO', 'Heron', 0);
  await db().sku.update({ where: { id: heron.skuId }, data: { making: 'edition' } });
  const edition = {
    skuId: heron.skuId,
    size: 9,
    artistProofs: 1,
    statedOn: new Date('2026-01-01'),
  };
  await db().edition.create({ data: edition });
  await inTransaction(async (tx) => {
    const came = { skuId: heron.skuId, placeId: gallery.counterId, quantity: 1 };
    const made = { ...came, reason: 'made' as const, unitCostCents: null };
    await bringIntoStock(tx, doing(gallery.maker), [
      { ...made, editionNumber: 3 },
      { ...made, editionNumber: 7 },
      { ...made, placeId: gallery.backRoomId, editionNumber: 5 },
    ]);
    return ok(null);
  });
});

const key = () => ({ requestKey: randomUUID() });

async function begun(how: 'all' | 'part' = 'all'): Promise<CountSheet> {
  const input = { ...key(), placeId: gallery.counterId, how };
  const count = await beginCount(doing(gallery.maker), input);
  if (!count.ok) throw new Error(count.refusal.code);
  return sheetOf(count.value.number);
}

async function sheetOf(number: number): Promise<CountSheet> {
  const sheet = await findCount(gallery.maker, number, 1);
  if (!sheet) throw new Error('The count is there.');
  return sheet;
}

const scan = (count: CountSheet, code: string, who = gallery.maker) =>
  scanInCount(doing(who), { ...key(), countId: count.id, code });

async function book(count: CountSheet, whys: Record<string, string>, whyForAll = '') {
  const { shownSha256 } = await sheetOf(count.number);
  const whysByField = Object.fromEntries(
    Object.entries(whys).map(([skuId, why]) => [`why.${skuId}`, why]),
  );
  const form = { ...key(), countId: count.id, shownSha256, whyForAll, ...whysByField };
  return bookCount(doing(gallery.maker, later(60)), bookCountInput.parse(form));
}

async function onHand(piece: TestPiece): Promise<number> {
  const rows = await sql<{ n: number }>(
    'select "onHand" as n from "StockLevel" where "skuId" = $1 and "placeId" = $2',
    [piece.skuId, gallery.counterId],
  );
  return rows[0]?.n ?? 0;
}

describe('scanning', () => {
  test('several devices at once count every piece once', async () => {
    const count = await begun();
    const device = async (who: OpenGallery['maker'], codes: readonly string[]) => {
      for (const code of codes) expect(await scan(count, code, who)).toMatchObject({ ok: true });
    };
    await Promise.all([
      device(gallery.maker, ['ts-10-ci', 'KF-08-MW', 'TS-10-CI']),
      device(gallery.clerk, ['KF-08-MW', 'TS-10-CI']),
      device(gallery.second, ['TS-10-CI', 'KF-08-MW']),
    ]);
    const lines = (await sheetOf(count.number)).lines.map((line) => [line.sku, line.counted]);
    expect(lines).toEqual([
      ['KF-08-MW', 3],
      ['TS-10-CI', 4],
    ]);
  });

  test('the same scan sent twice counts once; a number may be set and taken back', async () => {
    const count = await begun();
    const once = { ...key(), countId: count.id, code: 'TS-10-CI' };
    const first = await scanInCount(doing(gallery.clerk), once);
    expect(await scanInCount(doing(gallery.clerk), once)).toEqual(first);
    expect(first).toMatchObject({ ok: true, value: { counted: 1, title: 'Tern over Shoals' } });
    const set = { ...key(), countId: count.id, skuId: tern.skuId, counted: 3 };
    expect(await setCounted(doing(gallery.clerk), set)).toMatchObject({ value: { counted: 3 } });
    await scan(count, 'HR-14-MO 3');
    const seen = { ...key(), countId: count.id, skuId: heron.skuId, number: 3 };
    expect(await unseeNumber(doing(gallery.clerk), seen)).toMatchObject({ value: { counted: 0 } });
  });

  test.each([
    ['a code nobody has', 'NO-1-X', 'unknown_code'],
    ['a misread code', '2000000000012', 'misread_code'],
    ['an edition without its number', 'HR-14-MO', 'number_needed'],
    ['a number of what has none', 'TS-10-CI 3', 'no_number'],
    ['a number beyond the edition', 'HR-14-MO 11', 'number_beyond'],
    ['a number that was seen', 'HR-14-MO 7', 'seen_already'],
  ])('%s is told, and counts nothing', async (_label, code, refused) => {
    const count = await begun();
    await scan(count, 'HR-14-MO 7');
    expect(await scan(count, code)).toMatchObject({ ok: false, refusal: { code: refused } });
    expect((await sheetOf(count.number)).pieces).toBe(1);
  });
});

describe('booking', () => {
  test('puts the books right: missing, found, and an edition number by number', async () => {
    const count = await begun();
    await scan(count, 'TS-10-CI');
    for (const code of ['KF-08-MW', 'KF-08-MW', 'KF-08-MW']) await scan(count, code);
    for (const code of ['HR-14-MO 3', 'HR-14-MO 4']) await scan(count, code);
    const sheet = await sheetOf(count.number);
    expect(sheet.differences.map((each) => [each.sku, each.expected, each.counted])).toEqual([
      ['HR-14-MO', 2, 2],
      ['KF-08-MW', 2, 3],
      ['TS-10-CI', 3, 1],
    ]);
    const unsaid = await book(count, { [tern.skuId]: 'missing' }, '');
    expect(unsaid).toMatchObject({ refusal: { code: 'why_needed', sku: 'HR-14-MO' } });
    const booked = await book(count, { [tern.skuId]: 'missing', [fern.skuId]: 'found' }, 'counted');
    expect(booked).toEqual({ ok: true, value: { differences: 3 } });
    expect([await onHand(tern), await onHand(fern), await onHand(heron)]).toEqual([1, 3, 2]);
    const numbers = await sql<{ number: number }>(
      'select number from "EditionPiece" where "placeId" = $1 order by number',
      [gallery.counterId],
    );
    expect(numbers.map((row) => row.number)).toEqual([3, 4]);
    const kept = (await sheetOf(count.number)).lines.map(({ sku, expected, why }) => ({
      ...{ sku, expected, why },
    }));
    expect(kept).toContainEqual({ sku: 'TS-10-CI', expected: 3, why: 'missing' });
    const reasons = await sql<{ reason: string }>(
      'select reason from "StockMovement" where "countId" = $1 order by id',
      [count.id],
    );
    expect(reasons.map((row) => row.reason)).toEqual([
      ...['counted', 'missing', 'counted', 'missing'],
    ]);
  });

  test('what was sold meanwhile changes what the books say, and must be looked at again', async () => {
    const count = await begun('part');
    await scan(count, 'TS-10-CI');
    await scan(count, 'TS-10-CI');
    const { shownSha256 } = await sheetOf(count.number);
    const sold = await sellNow(
      doing(gallery.clerk, later(5)),
      aSale([{ piece: tern, quantity: 1 }]),
    );
    expect(sold.ok).toBe(true);
    const form = { ...key(), countId: count.id, shownSha256, whyForAll: 'missing' };
    const stale = await bookCount(doing(gallery.maker, later(60)), bookCountInput.parse(form));
    expect(stale).toMatchObject({ refusal: { code: 'differences_changed' } });
    expect(await book(count, {})).toEqual({ ok: true, value: { differences: 0 } });
    expect(await onHand(tern)).toBe(2);
  });

  test('the part of a count leaves what was not counted alone', async () => {
    const count = await begun('part');
    await scan(count, 'KF-08-MW');
    const sheet = await sheetOf(count.number);
    expect(sheet.differences.map((each) => each.sku)).toEqual(['KF-08-MW']);
    expect(await book(count, {}, 'broken')).toMatchObject({ ok: true });
    expect([await onHand(tern), await onHand(fern)]).toEqual([3, 1]);
  });

  test('a held piece is not counted away, and a number elsewhere is not here too', async () => {
    await sql(
      `insert into "Hold" (id, "skuId", "placeId", quantity, "forWhom", "untilAt", "staffId", at)
       values (gen_random_uuid(), $1, $2, 2, 'Wren Alder', now() + interval '1 day', $3, now())`,
      [tern.skuId, gallery.counterId, gallery.clerk.id],
    );
    const count = await begun('part');
    await scan(count, 'TS-10-CI');
    const held = await book(count, {}, 'missing');
    expect(held).toMatchObject({ refusal: { code: 'held_pieces', heldFor: ['Wren Alder'] } });
    await scan(count, 'TS-10-CI');
    for (const code of ['HR-14-MO 3', 'HR-14-MO 7', 'HR-14-MO 5']) await scan(count, code);
    const elsewhere = await book(count, {}, 'counted');
    expect(elsewhere).toMatchObject({
      refusal: { code: 'number_is_elsewhere', number: 5, place: 'Back room' },
    });
  });

  test('a count is begun once, booked once, and after that takes nothing', async () => {
    const count = await begun();
    const second = await beginCount(doing(gallery.clerk), {
      ...{ ...key(), placeId: gallery.counterId, how: 'all' },
    });
    expect(second).toMatchObject({ refusal: { code: 'count_is_open', number: count.number } });
    expect(await book(count, {})).toMatchObject({ refusal: { code: 'nothing_counted' } });
    await scan(count, 'TS-10-CI');
    const both = await Promise.all([book(count, {}, 'missing'), book(count, {}, 'missing')]);
    expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
    expect(await onHand(tern)).toBe(1);
    expect(await scan(count, 'TS-10-CI')).toMatchObject({
      refusal: { code: 'count_is_over', how: 'booked' },
    });
    expect((await listCounts(gallery.clerk)).map((each) => each.state)).toEqual(['booked']);
  });

  test('a count that is left books nothing, and the books may not count', async () => {
    const count = await begun();
    await scan(count, 'TS-10-CI');
    const left = await leaveCount(doing(gallery.maker), { ...key(), countId: count.id });
    expect(left).toMatchObject({ ok: true });
    expect(await book(count, {}, 'missing')).toMatchObject({
      refusal: { code: 'count_is_over', how: 'left' },
    });
    expect(await onHand(tern)).toBe(3);
    const input = { ...key(), placeId: gallery.counterId, how: 'all' } as const;
    const books = await beginCount(doing(gallery.books), input);
    expect(books).toMatchObject({ refusal: { code: 'not_allowed' } });
    const nowhere = await beginCount(doing(gallery.clerk), { ...input, placeId: randomUUID() });
    expect(nowhere).toMatchObject({ refusal: { code: 'unknown_place' } });
  });
});
