import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { mergeInput, setApartInput } from '@/lib/collectors/input/merge';
import { findCollectors, getCollector } from '@/lib/collectors/reads';
import { getCard } from '@/lib/collectors/reads/card';
import { readConsents } from '@/lib/collectors/reads/consents';
import { listFeesOf } from '@/lib/collectors/reads/fees';
import { idsOf, livingId, livingIds } from '@/lib/collectors/reads/group';
import { readEverythingKept } from '@/lib/collectors/reads/kept';
import { listMerged } from '@/lib/collectors/reads/merges';
import { listOwned } from '@/lib/collectors/reads/owned';
import { listOpenPapers } from '@/lib/collectors/reads/papers';
import { getTradePage } from '@/lib/collectors/reads/trade-page';
import { keepNote } from '@/lib/collectors/writes/card';
import { noteInput } from '@/lib/collectors/input/card';
import { mergeCollectors, setApart } from '@/lib/collectors/writes/merge';
import { listCommissions, listCommissionsOf } from '@/lib/commissions/reads';
import { readSlipRow } from '@/lib/counter/reads/slip-row';
import { db } from '@/lib/platform/db/client';
import { findShopSheet } from '@/lib/wholesale/reads';
import {
  aSale,
  doing,
  openGallery,
  sellNow,
  type OpenGallery,
} from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { aWholeLife, type WholeLife } from './a-whole-life';
import { fieldsThatName } from './fields-that-name';

let gallery: OpenGallery;

const mergeForm = (keep: string, otherId: string, requestKey: string = randomUUID()) =>
  mergeInput.parse({ requestKey, oneId: keep, otherId, keep });

async function merged(keptId: string, goneId: string): Promise<string> {
  const result = await mergeCollectors(doing(gallery.clerk), mergeForm(keptId, goneId));
  if (!result.ok) throw new Error(result.refusal.code);
  const merge = await db().collectorMerge.findFirstOrThrow({ where: { goneId, undoneAt: null } });
  return merge.id;
}

const undone = (mergeId: string) =>
  setApart(doing(gallery.clerk), setApartInput.parse({ requestKey: randomUUID(), mergeId }));

/** The same, from the database's own foreign keys: neither list may know more than the other. */
async function keysToCollector(): Promise<string[]> {
  const rows = await sql<{ of: string }>(`
    SELECT cl.relname || '.' || att.attname AS of FROM pg_constraint con
    JOIN pg_class cl ON cl.oid = con.conrelid
    JOIN pg_attribute att ON att.attrelid = con.conrelid AND att.attnum = ANY(con.conkey)
    WHERE con.contype = 'f' AND con.confrelid = '"Collector"'::regclass`);
  return rows.map((row) => row.of).toSorted();
}

const kept = async (id: string) => readEverythingKept(db(), await idsOf(db(), id));

/** Of rows that name somebody, those whose link leads to the page of this one. */
async function leadingTo(id: string, rows: readonly { collectorId: string | null }[]) {
  const led = await Promise.all(
    rows.map(async ({ collectorId }) => {
      const page = await getCollector(gallery.owner, collectorId ?? '');
      return page?.id === id ? [collectorId] : [];
    }),
  );
  return led.flat();
}

/** By what each row that names a collector is found at the kept one; each must tell of its mark. */
const reached: Record<string, (id: string) => Promise<unknown>> = {
  'CollectorAddress.collectorId': async (id) => (await getCard(gallery.owner, id)).addresses,
  'CollectorPerson.collectorId': async (id) => (await getCard(gallery.owner, id)).people,
  'CollectorNote.collectorId': async (id) => (await getCard(gallery.owner, id)).notes,
  'Consent.collectorId': (id) => readConsents(db(), id),
  'OwnedPiece.collectorId': async (id) =>
    (await listOwned(gallery.owner, id)).filter(({ by }) => by.kind === 'told'),
  'Sale.collectorId': async (id) => (await getCollector(gallery.owner, id))?.purchases,
  'Sale.referredById': async (id) => (await kept(id)).referredSales,
  'ReferralFee.collectorId': async (id) => (await listFeesOf(gallery.owner, id, '2026-11-20')).fees,
  'Posting.collectorId': async (id) => (await kept(id)).postings,
  'Commission.collectorId': (id) => listCommissionsOf(gallery.owner, id),
  'Commission.broughtById': async (id) => (await kept(id)).brought,
  'TradeTerms.collectorId': async (id) => (await getTradePage(gallery.owner, id))?.terms,
  'ResaleCertificate.collectorId': async (id) =>
    (await getTradePage(gallery.owner, id))?.certificates,
  'Hold.collectorId': async (id) => (await listOpenPapers(gallery.owner, id)).holds,
  'Layaway.collectorId': async (id) => (await listOpenPapers(gallery.owner, id)).layaways,
  'OnApproval.collectorId': async (id) => (await listOpenPapers(gallery.owner, id)).approvals,
  'Shipment.collectorId': async (id) => (await kept(id)).shipments,
  'SpecialOrder.collectorId': async (id) => (await listOpenPapers(gallery.owner, id)).orders,
  'Credit.collectorId': async (id) => (await listOpenPapers(gallery.owner, id)).credits,
  'WholesaleOrder.collectorId': async (id) => (await findShopSheet(gallery.owner, id))?.orders,
  'TownPromise.collectorId': async (id) => (await findShopSheet(gallery.owner, id))?.promises,
  'Consignee.collectorId': async (id) => leadingTo(id, await db().consignee.findMany()),
  'Waiting.collectorId': async (id) => leadingTo(id, await db().waiting.findMany()),
  'Slip.collectorId': async (id) => leadingTo(id, await db().slip.findMany()),
  'Collector.mergedIntoId': (id) => listMerged(gallery.owner, id),
  'CollectorMerge.keptId': (id) => listMerged(gallery.owner, id),
};

describe('a table that names a collector', () => {
  test('has its way to be reached after a merge, or somebody has to think of it', async () => {
    expect(fieldsThatName().length).toBeGreaterThanOrEqual(25);
    expect(Object.keys(reached).toSorted()).toEqual(fieldsThatName());
    expect(await keysToCollector()).toEqual(fieldsThatName());
  });
});

describe('a whole life laid into another', () => {
  let one: WholeLife;
  let other: WholeLife;
  const counts = async (id: string) => {
    const told = await Promise.all(
      Object.entries(reached).map(async ([field, read]) => {
        const found = await read(id);
        return [field, Array.isArray(found) ? found.length : Number(Boolean(found))] as const;
      }),
    );
    return Object.fromEntries(told);
  };
  let before: { one: Record<string, number>; other: Record<string, number> };
  let mergeId: string;

  beforeAll(async () => {
    await startAfresh();
    gallery = await openGallery();
    one = await aWholeLife(gallery, 'alder');
    other = await aWholeLife(gallery, 'birch');
    before = { one: await counts(one.id), other: await counts(other.id) };
    mergeId = await merged(one.id, other.id);
  }, 60_000);

  const notFields = ['Collector.mergedIntoId', 'CollectorMerge.keptId'];

  test.each(Object.keys(reached).filter((field) => !notFields.includes(field)))(
    'every row of %s is found at the kept one',
    async (field) => {
      const found = await reached[field]?.(one.id);
      expect(before.one[field], 'the life has one').toBeGreaterThan(0);
      if (field === 'TradeTerms.collectorId') return expect(found).toMatchObject({ percent: '10' });
      const both = (before.one[field] ?? 0) + (before.other[field] ?? 0);
      expect(found).toHaveLength(both);
      return undefined;
    },
  );

  test('and so is everything by which the other was known', async () => {
    const [entry] = await listMerged(gallery.maker, one.id);
    expect(entry).toMatchObject({
      ...{ name: 'Name birch', firm: 'Firm birch', email: 'birch@life.example' },
      ...{ address: '1 birch Lane, Town birch, WA 00019', note: 'Note of birch' },
      ...{ into: 'Name alder', by: 'Perrin Oday' },
    });
  });

  test('the other is found by its own letters, and it is the kept one that is found', async () => {
    for (const letters of ['Name birch', 'birch@life', 'Person birch', 'Firm bir', 'Nmae birch']) {
      const found = await findCollectors(gallery.clerk, letters);
      expect(found[0], letters).toMatchObject({ id: one.id, name: 'Name alder' });
      expect(found.map(({ id }) => id)).not.toContain(other.id);
    }
    const newest = await findCollectors(gallery.clerk, '');
    expect(newest.map(({ id }) => id)).not.toContain(other.id);
    expect(await getCollector(gallery.clerk, other.id)).toMatchObject({ id: one.id });
  });

  test('what is written for the other from now on is the kept one’s', async () => {
    expect(await livingId(db(), other.id)).toBe(one.id);
    expect((await livingIds(db(), [other.id, null]))(other.id)).toBe(one.id);
    const note = noteInput.parse({
      ...{ requestKey: randomUUID(), collectorId: other.id, words: 'After the merge' },
    });
    await keepNote(doing(gallery.clerk), note);
    const [row] = await sql(`SELECT "collectorId" FROM "CollectorNote" WHERE words LIKE 'After%'`);
    expect(row).toEqual({ collectorId: one.id });
    await db().collectorNote.deleteMany({ where: { words: 'After the merge' } });
    const sale = aSale([{ piece: other.piece, quantity: 1 }], { collectorId: other.id });
    const sold = await sellNow(doing(gallery.clerk), sale);
    expect(sold).toMatchObject({ ok: true });
    const [written] = await sql(`SELECT "collectorId" FROM "Sale" ORDER BY number DESC LIMIT 1`);
    expect(written).toEqual({ collectorId: one.id });
  });

  test('the work of the other is found by the kept one’s name too', async () => {
    const found = await listCommissions(gallery.clerk, 'Name alder');
    expect(found.map(({ title }) => title)).toEqual(
      expect.arrayContaining(['Work alder', 'Work birch']),
    );
  });

  test('a slip put by under the other is sold under the kept one', async () => {
    const [slip] = await sql<{ id: string; version: number }>(
      `SELECT id, version FROM "Slip" WHERE "collectorId" = $1 AND "saleId" IS NULL`,
      [other.id],
    );
    expect(await readSlipRow(db(), slip?.id ?? '')).toMatchObject({ collectorId: one.id });
  });

  test('set apart again, each has exactly what was its own', async () => {
    expect(await undone(mergeId)).toEqual({ ok: true, value: other.id });
    const after = { one: await counts(one.id), other: await counts(other.id) };
    const sold = { ...before.one, 'Sale.collectorId': (before.one['Sale.collectorId'] ?? 0) + 1 };
    const slips = { ...sold, 'Slip.collectorId': (before.one['Slip.collectorId'] ?? 0) + 1 };
    // What was held under the other went with the sale to the kept one.
    const held = { ...before.other, 'Hold.collectorId': 0 };
    expect(after).toEqual({ one: slips, other: held });
    expect(await undone(mergeId)).toMatchObject({ refusal: { code: 'set_apart_already' } });
    expect(await getCollector(gallery.clerk, other.id)).toMatchObject({ id: other.id });
  });
});
