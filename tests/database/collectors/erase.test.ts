import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { eraseInput } from '@/lib/collectors/input/erase';
import { mergeInput } from '@/lib/collectors/input/merge';
import { findCollectors, getCollector } from '@/lib/collectors/reads';
import { getCard } from '@/lib/collectors/reads/card';
import { livingId } from '@/lib/collectors/reads/group';
import { listOpen } from '@/lib/collectors/reads/still-open/page';
import { listTwice } from '@/lib/collectors/reads/twice';
import { mayWriteTo } from '@/lib/collectors/rules/consent';
import { openKinds } from '@/lib/collectors/rules/erase';
import { keptParts } from '@/lib/collectors/rules/export';
import { eraseCollector } from '@/lib/collectors/writes/erase';
import { handOutKept } from '@/lib/collectors/writes/export';
import { mergeCollectors } from '@/lib/collectors/writes/merge';
import { listHistory } from '@/lib/commissions/reads/papers';
import { peopleFile, salesFile } from '@/lib/data/reads/take-out';
import { db } from '@/lib/platform/db/client';
import { findReceipt } from '@/lib/sales/reads/receipts';
import { doing, openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { closeEverything, leaveTraces } from './a-life-over';
import { aWholeLife, type WholeLife } from './a-whole-life';

let gallery: OpenGallery;
let life: WholeLife;
let second: WholeLife;

/** Telephone and mail of both lives, their marks in names, streets and words. */
const traces = /zalder|zbirch|life\.example|555 010 0152/i;

const eraseForm = (typed: string, requestKey: string = randomUUID()) =>
  eraseInput.parse({ requestKey, collectorId: life.id, typed });
const erase = (typed = 'Name zalder') => eraseCollector(doing(gallery.owner), eraseForm(typed));

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  life = await aWholeLife(gallery, 'zalder');
  second = await aWholeLife(gallery, 'zbirch');
  await leaveTraces(gallery, life);
  // Two that are one: what is asked of the kept one is done to both.
  await db().tradeTerms.delete({ where: { collectorId: second.id } });
  const ids = { oneId: life.id, otherId: second.id, keep: life.id };
  const form = mergeInput.parse({ requestKey: randomUUID(), ...ids });
  await mergeCollectors(doing(gallery.clerk), form);
}, 60_000);

/** Every column of text or JSON in which something is found of them. */
async function columnsThatTell(): Promise<string[]> {
  const columns = await sql<{ of: string; table: string; column: string }>(`
    SELECT table_name || '.' || column_name AS of, table_name AS table, column_name AS column
    FROM information_schema.columns
    WHERE table_schema = 'public' AND data_type IN ('text', 'json', 'jsonb', 'character varying')`);
  expect(columns.length).toBeGreaterThan(150);
  const found: string[] = [];
  for (const { of, table, column } of columns) {
    const [row] = await sql(`SELECT 1 FROM "${table}" WHERE "${column}"::text ~* $1 LIMIT 1`, [
      traces.source,
    ]);
    if (row) found.push(of);
  }
  return found.toSorted();
}

describe('what is handed out', () => {
  test('has everything, each part explained, and no secret', async () => {
    const kept = await handOutKept(doing(gallery.owner), life.id);
    if (!kept.ok) throw new Error(kept.refusal.code);
    const file = JSON.parse(kept.value) as Record<string, unknown[]>;
    for (const part of Object.keys(keptParts)) expect(file[part], part).not.toHaveLength(0);
    expect(file['entries']).toHaveLength(2);
    expect(file['sales']).toMatchObject([{ soldOn: '2026-11-20', totalCents: '10800' }, {}, {}]);
    expect(file['commissions']).toMatchObject([
      {
        signatures: [{ name: 'Name zalder' }],
        agreements: [{ agreedBy: 'Name zalder', priceCents: '100000', agreedOn: '2026-11-04' }],
        mails: [{ subject: 'Dear zalder' }, {}],
      },
      {},
    ]);
    expect(file['consents']).toMatchObject([{ to: 'letter', saidOn: '2026-11-01' }, {}]);
    expect(kept.value).not.toMatch(/tokenSha256|unitCostCents|buildUp/);
  });

  test('that it was handed out is written down, and to nobody but by the owner', async () => {
    expect(await handOutKept(doing(gallery.clerk), life.id)).toMatchObject({
      refusal: { code: 'not_allowed' },
    });
    const lines = await sql(
      `SELECT facts FROM "AuditLine" WHERE did = 'handed out everything kept of a collector'`,
    );
    expect(lines).toEqual([{ facts: {} }]);
  });
});

describe('while something is open', () => {
  test('nobody is struck out, and all that is open is told', async () => {
    const open = await listOpen(gallery.owner, life.id, new Date('2026-11-09'));
    const kinds = open.map(({ kind }) => kind).toSorted();
    const notHere = ['to_collect'];
    expect(kinds).toEqual(
      [...openKinds, 'they_owe', 'we_owe'].filter((kind) => !notHere.includes(kind)).toSorted(),
    );
    expect(await erase()).toMatchObject({ refusal: { code: 'still_open' } });
    expect(await getCollector(gallery.owner, life.id)).toMatchObject({ name: 'Name zalder' });
  });

  test('the maker, the clerk and the books strike nobody out; nor does another name', async () => {
    for (const who of [gallery.maker, gallery.clerk, gallery.books]) {
      const result = await eraseCollector(doing(who), eraseForm('Name zalder'));
      expect(result).toMatchObject({ refusal: { code: 'not_allowed' } });
    }
    expect(await erase('Name zbirch')).toMatchObject({ refusal: { code: 'name_does_not_fit' } });
  });
});

/** Where something stays, and why. Anything else that is found fails the test. */
const staysBecause: Record<string, string> = {
  'Agreement.agreedBy': 'what was agreed is evidence, never changed',
  'Agreement.body': 'what was signed is evidence, word for word, under its hash',
  'Signature.name': 'what was signed is evidence, under its hash',
  'CollectorLink.forName': 'by whom it was signed; an address that was not used is thrown away',
  'CommissionEnding.why': 'how an agreement ended is a part of it, never changed',
  'ResaleCertificate.legalName': 'a tax paper: why no tax was charged',
  'ResaleCertificate.permitNumber': 'a tax paper: why no tax was charged',
  'Sale.deliverTo': 'tax hangs on where it was sent; no longer shown',
  'Sale.giftTo': 'a row of a sale is never changed; no longer shown',
  'Sale.giftWords': 'a row of a sale is never changed; no longer shown',
  'JournalEntry.memo': 'a row of the books is never changed',
  'CommandKey.answer': 'the answer of a command, so that one sent twice happens once; never shown',
  'AuditLine.facts': 'the history is never changed; no longer shown with names',
};

describe('when all is closed', () => {
  let before: string[];

  beforeAll(async () => {
    await closeEverything(gallery, life);
    await closeEverything(gallery, second);
    before = await columnsThatTell();
    expect(await listOpen(gallery.owner, life.id, new Date('2026-11-21'))).toEqual([]);
    const form = eraseForm('  name  ZALDER ');
    const owner = doing(gallery.owner);
    const both = await Promise.all([eraseCollector(owner, form), eraseCollector(owner, form)]);
    expect(both[0]).toEqual({ ok: true, value: 'Erased collector 1' });
    expect(both[1]).toEqual(both[0]);
  }, 60_000);

  test('nothing is found of them but what the books must keep', async () => {
    expect(before.length).toBeGreaterThan(45);
    expect(await columnsThatTell()).toEqual(Object.keys(staysBecause).toSorted());
  });

  test('the audit of it, and the key of the command, name nobody', async () => {
    const told = await sql(`SELECT facts FROM "AuditLine" WHERE did LIKE 'struck out%'`);
    expect(told).toEqual([{ facts: { number: 1, entries: 2 } }]);
    const keys = await sql(`SELECT * FROM "CommandKey" WHERE command = 'eraseCollector'`);
    expect(keys).toHaveLength(1);
    expect(JSON.stringify(keys)).not.toMatch(traces);
  });

  test('lists, pages and files show nothing of them', async () => {
    const owner = gallery.owner;
    for (const letters of ['zalder', 'zbirch', 'life.example', '0100152', 'Erased']) {
      const found = (await findCollectors(owner, letters)).map(({ id }) => id);
      expect(found, letters).not.toContain(life.id);
      expect(found, letters).not.toContain(second.id);
    }
    const page = await getCollector(owner, second.id);
    expect(page).toMatchObject({ id: life.id, name: 'Erased collector 1', email: null, note: '' });
    const receipts = await Promise.all(
      (page?.purchases ?? []).map(({ receiptNumber }) => findReceipt(owner, receiptNumber)),
    );
    const commissions = await db().commission.findMany({ where: { collectorId: life.id } });
    const histories = await Promise.all(
      commissions.map(({ id }) => listHistory(owner, id, { currency: 'USD' })),
    );
    const shown = [page, receipts, await getCard(owner, life.id), histories, commissions];
    const files = [await peopleFile(owner), await salesFile(owner), await listTwice(owner)];
    const text = JSON.stringify([shown, files], (_key, value: unknown) =>
      typeof value === 'bigint' ? `${value}` : value,
    );
    expect(receipts).toHaveLength(3);
    expect(histories.flat().length).toBeGreaterThan(1);
    expect(text).not.toMatch(traces);
    expect(await handOutKept(doing(owner), life.id)).toMatchObject({
      refusal: { code: 'struck_out_already', on: '2026-11-20' },
    });
  });

  test('the books are as they were, to the cent', async () => {
    const [sums] = await sql(
      `
      SELECT (SELECT count(*)::int FROM "Sale" WHERE "collectorId" = ANY($1::uuid[])) AS sales,
        (SELECT sum("totalCents")::int FROM "Sale" WHERE "collectorId" = ANY($1::uuid[])) AS cents,
        (SELECT count(*)::int FROM "Posting" WHERE "collectorId" = ANY($1::uuid[])) AS postings,
        (SELECT count(*)::int FROM "ResaleCertificate") AS certificates`,
      [[life.id, second.id]],
    );
    expect(sums).toEqual({ sales: 3, cents: 31_600, postings: 8, certificates: 2 });
  });

  test('nobody writes to them, writes them down again, or strikes them out twice', async () => {
    const { consents } = await getCard(gallery.owner, life.id);
    expect(consents[0]).toMatchObject({ to: 'letter', given: false, how: 'struck_out' });
    expect(mayWriteTo(consents, 'letter')).toBe(false);
    expect(await livingId(db(), second.id)).toBeNull();
    expect(await erase('Erased collector 1')).toMatchObject({
      refusal: { code: 'struck_out_already' },
    });
  });
});
