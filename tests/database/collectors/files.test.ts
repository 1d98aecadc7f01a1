import { beforeAll, expect, test } from 'vitest';
import { planFile } from '@/lib/data/reads/plan-file';
import { peopleFile } from '@/lib/data/reads/take-out';
import { db } from '@/lib/platform/db/client';
import { noon, openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';

let gallery: OpenGallery;
let ids: { kept: string; gone: string; erased: string };

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  const add = async (data: Record<string, unknown>) => {
    const row = { name: 'Marit Oland', createdAt: noon, ...data };
    return (await db().collector.create({ data: row })).id;
  };
  const kept = await add({ phone: '555 010 0152' });
  const gone = await add({ name: 'M. Oland', email: 'm@x.example', mergedIntoId: kept });
  const erased = await add({ name: 'Erased collector 1', erasedAt: noon });
  ids = { kept, gone, erased };
});

async function planned(lines: string) {
  const bytes = new TextEncoder().encode(`key,name,phone\n${lines}`);
  const plan = await planFile(db(), { kind: 'people', bytes, now: noon });
  if (!plan.ok || plan.value.kind !== 'people')
    return expect.unreachable('It is a file of people.');
  return plan.value.plan;
}

test('a file taken out has neither those laid into another nor those who were struck out', async () => {
  const file = await peopleFile(gallery.owner);
  expect(file).toContain(ids.kept);
  expect(file).not.toMatch(new RegExp(`${ids.gone}|${ids.erased}|M\\. Oland|Erased`));
});

test('a line with the key of one who was laid into another is the kept one’s', async () => {
  const plan = await planned(`${ids.gone},Marit Oland,555 010 0199`);
  expect(plan).toMatchObject([{ verdict: 'changed', id: ids.kept, changes: ['phone'] }]);
});

test('a line with the key of one who was struck out is not brought in again', async () => {
  const plan = await planned(`${ids.erased},Marit Oland,555 010 0152`);
  expect(plan).toMatchObject([{ verdict: 'refused', faults: [{ column: 'key' }] }]);
  expect(JSON.stringify(plan)).toMatch(/They asked to be struck out/);
});
