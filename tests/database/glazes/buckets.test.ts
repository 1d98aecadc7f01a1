import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { writeBatchInput } from '@/lib/commissions/input/colours/batches';
import { keepBodyInput } from '@/lib/commissions/input/enquiry/body';
import { listBatches } from '@/lib/commissions/reads/colours/studio';
import { listBodies } from '@/lib/commissions/reads/enquiry/bodies';
import { writeBatch } from '@/lib/commissions/writes/colours/batches';
import { keepBody } from '@/lib/commissions/writes/enquiry/body';
import { addGlazeInput } from '@/lib/glazes/input';
import { listGlazeNames } from '@/lib/glazes/reads/tiles';
import { addGlaze } from '@/lib/glazes/writes/glazes';
import { aStudio, type TestStudio } from '@/tests/database/studio/a-studio';

let studio: TestStudio;
beforeAll(async () => {
  studio = await aStudio();
  for (const name of ['Fog over iron', 'Kelp']) {
    const glaze = { requestKey: randomUUID(), name, cone: '6', coats: '3', base: 'Feldspar 1' };
    const added = await addGlaze(studio.maker, addGlazeInput.parse(glaze));
    if (!added.ok) throw new Error(added.refusal.code);
  }
});
const code = (result: { ok: boolean; refusal?: { code: string } }) =>
  result.ok ? 'ok' : result.refusal?.code;

async function chosen(name: string): Promise<{ id: string; recipe: string }> {
  const glazes = await listGlazeNames(studio.maker.actor, '2026-05-04');
  const glaze = glazes.find((each) => each.name === name);
  return { id: glaze?.id ?? '', recipe: glaze?.recipes[0]?.id ?? '' };
}

const aBucket = (over: Record<string, string>) =>
  writeBatchInput.parse({
    ...{ requestKey: randomUUID(), number: 'B-1', mixedOn: '2026-05-02', ...over },
  });

test('a bucket names its glaze of the book and its recipe; refused in order', async () => {
  const [fog, kelp] = [await chosen('Fog over iron'), await chosen('Kelp')];
  const written = aBucket({ inBook: `${fog.id}/${fog.recipe}`, weightG: '5 kg' });
  expect(await writeBatch(studio.maker, written)).toMatchObject({ ok: true });
  const refused = [
    await writeBatch(studio.books, aBucket({ inBook: randomUUID() })),
    await writeBatch(studio.maker, aBucket({ inBook: randomUUID() })),
    await writeBatch(studio.maker, aBucket({ number: 'B-2', inBook: randomUUID() })),
    await writeBatch(studio.maker, aBucket({ number: 'B-2', inBook: `${kelp.id}/${fog.recipe}` })),
  ];
  expect(refused.map(code)).toEqual([
    ...['not_allowed', 'batch_number_taken', 'unknown_glaze', 'unknown_glaze'],
  ]);
  const more = [
    await writeBatch(
      studio.maker,
      aBucket({ number: 'B-2', inBook: kelp.id, glaze: 'Kelp, thin' }),
    ),
    await writeBatch(studio.maker, aBucket({ number: 'B-3', glaze: 'bought clear' })),
  ];
  expect(more.map(code)).toEqual(['ok', 'ok']);
  const told = (await listBatches(studio.gallery.actor)).map(({ number, glaze, inBook }) => [
    number,
    glaze,
    inBook && `${inBook.name} ${inBook.version ?? '–'}`,
  ]);
  expect(told.toSorted()).toEqual([
    ['B-1', 'Fog over iron', 'Fog over iron 1'],
    ['B-2', 'Kelp, thin', 'Kelp –'],
    ['B-3', 'bought clear', null],
  ]);
});

test('a bucket without any glaze is told at its field', () => {
  const read = writeBatchInput.safeParse({
    ...{ requestKey: randomUUID(), number: 'B-4', mixedOn: '2026-05-02', inBook: '' },
  });
  expect(read.error?.issues[0]).toMatchObject({ path: ['glaze'] });
  expect(read.error?.issues[0]?.message).toMatch(/or choose one of the book/);
});

test('what a kilogram of clay costs is typed in dollars and kept in cents', async () => {
  const aBody = (centsPerKg: string) =>
    keepBodyInput.parse({ requestKey: randomUUID(), name: `Clay ${centsPerKg}`, centsPerKg });
  for (const typed of ['1.25', '$0.987', '']) {
    expect(code(await keepBody(studio.owner, aBody(typed)))).toBe('ok');
  }
  expect((await listBodies(studio.maker.actor)).map(({ centsPerKg }) => centsPerKg)).toEqual([
    ...[null, '98.7', '125'],
  ]);
  for (const typed of ['0', '-1', '1000.01', 'cheap']) {
    const read = keepBodyInput.safeParse({
      requestKey: randomUUID(),
      name: 'A',
      centsPerKg: typed,
    });
    expect(read.error?.issues[0]?.message).toMatch(/what a kilogram costs in dollars/);
  }
});
