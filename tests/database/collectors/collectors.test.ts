import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { keepCollectorInput } from '@/lib/collectors/input';
import { findCollectors, getCollector } from '@/lib/collectors/reads';
import { keepCollector } from '@/lib/collectors/writes';
import {
  aPieceHere,
  aSale,
  doing,
  openGallery,
  sellNow,
  type OpenGallery,
} from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  await kept({ name: 'Marit Oland', phone: '(555) 010-0152', city: 'Fernhollow' });
  await kept({ name: 'The Lantern House Inn', email: 'desk@lantern.example' });
  await kept({ name: 'Marisol and June Tavares' });
});

async function kept(fields: Record<string, unknown>): Promise<string> {
  const input = keepCollectorInput.parse({ requestKey: randomUUID(), ...fields });
  const result = await keepCollector(doing(gallery.clerk), input);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value.collectorId;
}

describe('a collector is found', () => {
  test.each([
    ['by the beginning', 'Mari', ['Marisol and June Tavares', 'Marit Oland']],
    ['by the middle', 'oland', ['Marit Oland']],
    ['with two letters swapped', 'Olnad', ['Marit Oland']],
    ['with a letter too many', 'Marrit Oland', ['Marit Oland']],
    ['by mail', 'desk@lantern', ['The Lantern House Inn']],
    ['by the figures of a telephone', '555 010 0152', ['Marit Oland']],
    ['not by a wild card', '%', []],
    ['not by anybody else’s letters', 'Zqxv', []],
  ])('%s', async (_label, letters, names) => {
    const found = await findCollectors(gallery.maker, letters);
    expect(found.map((each) => each.name).sort()).toEqual(names);
  });
});

test('the form sent twice adds one collector', async () => {
  const input = keepCollectorInput.parse({ requestKey: randomUUID(), name: 'Kenji Aldersey' });
  const both = await Promise.all([
    keepCollector(doing(gallery.clerk), input),
    keepCollector(doing(gallery.clerk), input),
  ]);
  expect(both[0]).toEqual(both[1]);
  expect(await sql(`SELECT 1 FROM "Collector" WHERE name = 'Kenji Aldersey'`)).toHaveLength(1);
});

test('a change keeps the collector and says what changed', async () => {
  const collectorId = await kept({ name: 'Odile Sefton' });
  const changed = { collectorId, name: 'Odile Sefton', phone: '(555) 010-0199' };
  expect(await kept(changed)).toBe(collectorId);
  expect(await getCollector(gallery.clerk, collectorId)).toMatchObject({ phone: '(555) 010-0199' });
  const [line] = await sql(`SELECT did, facts FROM "AuditLine"
    WHERE "subjectId" = '${collectorId}' ORDER BY id DESC LIMIT 1`);
  expect(line).toMatchObject({ did: 'changed a collector', facts: { changed: ['phone'] } });
});

describe('is refused', () => {
  const input = (over: Record<string, unknown>) =>
    keepCollectorInput.parse({ requestKey: randomUUID(), name: 'Nobody', ...over });
  test('to whoever may not write, before anything is looked up', async () => {
    const result = await keepCollector(doing(gallery.books), input({ collectorId: randomUUID() }));
    expect(result).toMatchObject({ ok: false, refusal: { code: 'not_allowed' } });
  });
  test('for an id that nobody has', async () => {
    const result = await keepCollector(doing(gallery.clerk), input({ collectorId: randomUUID() }));
    expect(result).toEqual({ ok: false, refusal: { code: 'unknown_collector' } });
    expect(await sql(`SELECT 1 FROM "Collector" WHERE name = 'Nobody'`)).toEqual([]);
  });
});

test('what they bought is on their page; the amount only for whoever sees receipts', async () => {
  const collectorId = await kept({ name: 'Yusra Lindqvist' });
  const fern = await aPieceHere(gallery, {
    ...{ sku: 'SF-08-MW', title: 'Sword Fern', priceCents: 10_000n, here: 1 },
  });
  await sellNow(doing(gallery.clerk), aSale([{ piece: fern, quantity: 1 }], { collectorId }));
  const clerk = await getCollector(gallery.clerk, collectorId);
  expect(clerk?.purchases).toMatchObject([{ titles: ['Sword Fern'], totalCents: 10_800n }]);
  const maker = await getCollector(gallery.maker, collectorId);
  expect(maker?.purchases).toMatchObject([{ titles: ['Sword Fern'], totalCents: null }]);
  expect(await getCollector(gallery.clerk, 'not an id')).toBeNull();
});
