import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { consignInput, reportSoldInput } from '@/lib/consignment/input';
import { findGalleryTerms, listGalleries, listWithThem } from '@/lib/consignment/reads';
import { findNote, listNotes } from '@/lib/consignment/reads/papers';
import { findStatement, listStatements } from '@/lib/consignment/reads/statements';
import { beginWithGallery, changeTerms, endWithGallery } from '@/lib/consignment/writes';
import { reportSold } from '@/lib/consignment/writes/report';
import { bringBackFromGallery, sendToGallery } from '@/lib/consignment/writes/send';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { settleAccount } from '@/lib/sales/writes/settle-account';
import { sql } from '@/tests/helpers/database';
import { aPieceHere, doing, later, noon, openGallery } from '../sales/open-gallery';
import type { OpenGallery, TestPiece } from '../sales/open-gallery';

let gallery: OpenGallery;
let heron: TestPiece;
let fern: TestPiece;
let collectorId: string;
let consigneeId: string;
let placeId: string;

const key = () => ({ requestKey: randomUUID() });
const terms = { sharePercent: '50', payDays: 15, terms: '', sinceOn: '2026-01-05' } as const;

beforeAll(async () => {
  gallery = await openGallery();
  heron = await aPieceHere(gallery, {
    ...{ sku: 'HR-14-MO', title: 'Heron II', priceCents: 38_000n, here: 3 },
  });
  fern = await aPieceHere(gallery, {
    ...{ sku: 'FT-06-CI', title: 'Fern tile', priceCents: 5_200n, here: 6 },
  });
  const who = { kind: 'business', name: 'Saltgrass Rooms', createdAt: noon } as const;
  collectorId = (await db().collector.create({ data: who })).id;
  const begun = await beginWithGallery(doing(gallery.owner), { ...key(), collectorId, ...terms });
  if (!begun.ok) throw new Error(begun.refusal.code);
  consigneeId = begun.value.consigneeId;
  placeId = (await findGalleryTerms(gallery.owner, consigneeId))?.placeId ?? '';
});

const aNote = (ready: string, over: Record<string, string> = {}) =>
  consignInput.parse({ ...key(), consigneeId, placeId: gallery.counterId, ready, ...over });

const aLine = (at: number, line: Record<string, string>) =>
  Object.fromEntries(
    Object.entries({ quantity: '1', discount: '', borneBy: 'nobody', ...line }).map(
      ([name, value]) => [`lines.${at}.${name}`, value],
    ),
  );
const heronSold = { sku: 'HR-14-MO', soldOn: '2026-11-03', retail: '380.00' };
const fernSold = { sku: 'FT-06-CI', soldOn: '2026-11-09', retail: '52' };

const aReport = (lines: Record<string, string>[], over: Record<string, string> = {}) =>
  reportSoldInput.parse({
    ...{ ...key(), consigneeId, fromOn: '2026-11-01', untilOn: '2026-11-20' },
    ...Object.assign({}, ...lines.map((line, at) => aLine(at, line))),
    ...over,
  });

async function onHand(piece: TestPiece, at: string): Promise<number> {
  const rows = await sql<{ n: number }>(
    'select "onHand" as n from "StockLevel" where "skuId" = $1 and "placeId" = $2',
    [piece.skuId, at],
  );
  return rows[0]?.n ?? 0;
}

describe('beginning with another gallery', () => {
  test('gives it a place of its own, where our pieces stand', async () => {
    const place = await db().place.findUnique({ where: { id: placeId } });
    expect(place).toMatchObject({ name: 'Saltgrass Rooms', kind: 'consignee' });
  });

  test('is refused to the maker, twice, without a business, and for a name that is taken', async () => {
    const clerk = doing(gallery.clerk);
    const asked = { ...terms, collectorId };
    const maker = await beginWithGallery(doing(gallery.maker), { ...key(), ...asked });
    expect(maker).toMatchObject({ refusal: { code: 'not_allowed' } });
    const nobody = await beginWithGallery(clerk, { ...key(), ...asked, collectorId: '' });
    expect(nobody).toMatchObject({ refusal: { code: 'unknown_collector' } });
    const person = await db().collector.create({ data: { name: 'Wren Alder', createdAt: noon } });
    const wren = await beginWithGallery(clerk, { ...key(), ...asked, collectorId: person.id });
    expect(wren).toMatchObject({ refusal: { code: 'not_a_business' } });
    const again = await beginWithGallery(clerk, { ...key(), ...asked });
    expect(again).toMatchObject({ refusal: { code: 'has_terms_already' } });
    const other = await db().collector.create({
      data: { name: 'back room', kind: 'business', createdAt: noon },
    });
    const taken = await beginWithGallery(clerk, { ...key(), ...asked, collectorId: other.id });
    expect(taken).toMatchObject({ refusal: { code: 'name_taken' } });
  });
});

describe('sending pieces', () => {
  test('moves them with a note at the prices of the day, once', async () => {
    const note = aNote('HR-14-MO*2.FT-06-CI*4', { note: 'in two crates' });
    const sent = await sendToGallery(doing(gallery.clerk), note);
    expect(sent).toMatchObject({ ok: true, value: { pieces: 6 } });
    expect(await sendToGallery(doing(gallery.clerk), note)).toEqual(sent);
    expect([await onHand(heron, placeId), await onHand(fern, gallery.counterId)]).toEqual([2, 2]);
    const paper = await findNote(gallery.clerk, sent.ok ? sent.value.number : 0);
    expect(paper).toMatchObject({
      ...{ isBack: false, from: 'Gallery floor', to: 'Saltgrass Rooms', pieces: 6 },
      ...{ retailCents: 96_800n, on: '2026-11-20', note: 'in two crates' },
    });
  });

  test('of a second is refused by us, and by the database', async () => {
    const second = await aPieceHere(gallery, {
      ...{ sku: 'FT-06-CI-S1', title: 'Fern, chipped', priceCents: 2_600n, here: 1 },
    });
    await db().sku.update({ where: { id: second.skuId }, data: { grade: 'second' } });
    const refused = await sendToGallery(doing(gallery.clerk), aNote('FT-06-CI-S1'));
    expect(refused).toMatchObject({ refusal: { code: 'second_to_gallery' } });
    const forced = sql(
      `insert into "StockMovement" ("skuId", "placeId", quantity, reason, at)
       values ($1, $2, 1, 'made', now())`,
      [second.skuId, placeId],
    );
    const failure: unknown = await forced.catch((error: unknown) => error);
    expect(constraintOf(failure)).toBe('seconds_are_not_consigned');
  });

  test.each([
    ['more than are here', 'HR-14-MO*9', 'not_there'],
    ['nothing', '', 'nothing_ready'],
  ])('of %s leaves no note behind', async (_label, ready, code) => {
    const before = await db().consignmentNote.count();
    const refused = await sendToGallery(doing(gallery.clerk), aNote(ready));
    expect(refused).toMatchObject({ refusal: { code } });
    expect(await db().consignmentNote.count()).toBe(before);
  });
});

describe('what they sold', () => {
  test('is earned at retail, less their share; what is due goes on their account', async () => {
    const report = aReport([{ ...heronSold, discount: '10%', borneBy: 'gallery' }, fernSold]);
    const told = await reportSold(doing(gallery.clerk), report);
    expect(told).toMatchObject({ ok: true, value: { due: '21600' } });
    expect(await reportSold(doing(gallery.clerk), report)).toEqual(told);
    expect([await onHand(heron, placeId), await onHand(fern, placeId)]).toEqual([1, 3]);

    const statement = await findStatement(gallery.clerk, told.ok ? told.value.number : 0);
    expect(statement).toMatchObject({
      ...{ dueCents: 21_600n, owedCents: 21_600n, dueOn: '2026-12-05', fromOn: '2026-11-01' },
      lines: [
        { title: 'Heron II', discountCents: 3_800n, shareCents: 19_000n, dueCents: 19_000n },
        { title: 'Fern tile', discountCents: 0n, shareCents: 2_600n, dueCents: 2_600n },
      ],
    });
    const postings = await sql<{ cents: string }>(
      `select "amountCents"::text as cents from "Posting" posting
       join "Sale" sale on sale."entryId" = posting."entryId"
       where sale.channel = 'consigned'`,
    );
    expect(postings.reduce((sum, each) => sum + BigInt(each.cents), 0n)).toBe(0n);
    expect(postings.map((each) => each.cents).sort()).toEqual(['-43200', '21600', '21600']);
    const [sale] = await sql('select "exemptWhy", "taxCents"::text from "Sale"');
    expect(sale).toEqual({
      ...{ exemptWhy: 'sold by another gallery, which charges the tax', taxCents: '0' },
    });
  });

  test('with a discount that is ours to bear is less by our part', async () => {
    const line = { ...fernSold, discount: '10.01', borneBy: 'both' };
    const told = await reportSold(doing(gallery.clerk), aReport([line]));
    expect(told).toMatchObject({ ok: true, value: { due: '2100' } });
  });

  test('two at once sell the last one once', async () => {
    const both = await Promise.all([
      reportSold(doing(gallery.clerk), aReport([heronSold])),
      reportSold(doing(gallery.second), aReport([heronSold])),
    ]);
    expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
    expect(both.find((each) => !each.ok)).toMatchObject({
      refusal: { code: 'not_with_them', sku: 'HR-14-MO', onHand: 0, place: 0 },
    });
  });

  test.each<[string, Record<string, string>[], Record<string, string>]>([
    ['nothing_sold', [], {}],
    ['days_turned', [fernSold], { fromOn: '2026-11-21' }],
    ['not_yet', [fernSold], { untilOn: '2026-11-21' }],
    ['sold_outside', [{ ...fernSold, soldOn: '2026-10-31' }], {}],
    ['discount_needs_bearer', [{ ...fernSold, discount: '1' }], {}],
    ['not_with_them', [{ ...fernSold, sku: 'NO-1-X' }], {}],
    ['unknown_gallery', [fernSold], { consigneeId: randomUUID() }],
  ])('%s is refused, and writes nothing', async (code, lines, over) => {
    const before = await db().sale.count();
    const refused = await reportSold(doing(gallery.clerk), aReport(lines, over));
    expect(refused).toMatchObject({ refusal: { code } });
    expect(await db().sale.count()).toBe(before);
  });
});

describe('what is owed', () => {
  test('goes down by what is paid, never below nothing, and is told by its age', async () => {
    const [newest, , first] = await listStatements(gallery.clerk, consigneeId);
    expect(newest?.dueCents).toBe(19_000n);
    const payment = (amount: bigint) => ({
      ...{ ...key(), saleId: first?.saleId ?? '', amount, kind: 'cheque' as const },
      ...{ reference: '', receivedOn: '2026-11-20' as const },
    });
    const paid = await settleAccount(doing(gallery.clerk, later(60)), payment(20_000n));
    expect(paid).toMatchObject({ ok: true, value: { stillOwed: '1600' } });
    const more = await settleAccount(doing(gallery.clerk, later(61)), payment(1_601n));
    expect(more).toMatchObject({ refusal: { code: 'more_than_owed' } });
    const [listed] = await listGalleries(gallery.clerk, new Date('2026-12-20T20:00:00Z'));
    expect(listed).toMatchObject({
      ...{ name: 'Saltgrass Rooms', owedCents: 22_700n, lateCents: 22_700n, pieces: 2 },
    });
  });

  test('what sits there longer than 120 days is marked', async () => {
    const there = await listWithThem(
      gallery.clerk,
      { consigneeId, placeId },
      new Date('2027-04-01T20:00:00Z'),
    );
    expect(there).toMatchObject([
      { sku: 'FT-06-CI', quantity: 2, sinceOn: '2026-11-20', sitsTooLong: true },
    ]);
  });
});

describe('the end', () => {
  test('comes when the last piece is back, with its note; what they owe stays owed', async () => {
    const clerk = doing(gallery.clerk, later(120));
    const end = { consigneeId, endedOn: '2026-11-20' } as const;
    const early = await endWithGallery(clerk, { ...key(), ...end });
    expect(early).toMatchObject({ refusal: { code: 'pieces_still_there', pieces: 2 } });
    const changed = { ...key(), consigneeId, sharePercent: '40', payDays: 30, terms: 'six months' };
    expect(await changeTerms(clerk, changed)).toMatchObject({ ok: true });
    const back = await bringBackFromGallery(clerk, aNote('FT-06-CI*2'));
    expect(back).toMatchObject({ ok: true, value: { pieces: 2 } });
    expect((await listNotes(gallery.clerk, consigneeId)).map((note) => note.isBack)).toEqual([
      ...[true, false],
    ]);
    expect(await endWithGallery(clerk, { ...key(), ...end })).toMatchObject({ ok: true });
    const again = await endWithGallery(clerk, { ...key(), ...end });
    expect(again).toMatchObject({ refusal: { code: 'ended_already' } });
    const sent = await sendToGallery(clerk, aNote('FT-06-CI'));
    expect(sent).toMatchObject({ refusal: { code: 'ended' } });
    expect((await listStatements(gallery.clerk, consigneeId)).length).toBe(3);
  });
});
