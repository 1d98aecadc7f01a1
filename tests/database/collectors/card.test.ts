import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { keepCollectorInput } from '@/lib/collectors/input';
import {
  addressInput,
  consentInput,
  noteInput,
  ownedInput,
  personInput,
  takeOffInput,
} from '@/lib/collectors/input/card';
import { findCollectors, getCollector } from '@/lib/collectors/reads';
import { getCard } from '@/lib/collectors/reads/card';
import { listOwned } from '@/lib/collectors/reads/owned';
import { mayWriteTo } from '@/lib/collectors/rules/consent';
import { keepCollector } from '@/lib/collectors/writes';
import {
  keepAddress,
  keepNote,
  keepPerson,
  sayConsent,
  takeOff,
} from '@/lib/collectors/writes/card';
import { keepOwned } from '@/lib/collectors/writes/owned';
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
});

async function aHousehold(name: string): Promise<string> {
  const fields = { requestKey: randomUUID(), name, kind: 'household', firm: '' };
  const result = await keepCollector(doing(gallery.clerk), keepCollectorInput.parse(fields));
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value.collectorId;
}

const of = (collectorId: string) => ({ requestKey: randomUUID(), collectorId });

function done(result: { ok: true; value: string } | { ok: false; refusal: { code: string } }) {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

test('people, addresses and notes are written, changed and taken off, each once per form', async () => {
  const clerk = doing(gallery.clerk);
  const id = await aHousehold('The Aldous house');
  const june = personInput.parse({ ...of(id), name: 'June Aldous', email: 'june@aldous.example' });
  const both = await Promise.all([keepPerson(clerk, june), keepPerson(clerk, june)]);
  expect(both[0]).toEqual(both[1]);
  const personId = done(both[0]);
  const changed = { ...of(id), personId, name: 'June Aldous', said: 'JOON', reach: 'before six' };
  expect(await keepPerson(clerk, personInput.parse(changed))).toEqual({
    ok: true,
    value: personId,
  });
  const home = { label: 'The boat house', street: '4 Tide Lane', city: 'Fernhollow' };
  const addressId = done(await keepAddress(clerk, addressInput.parse({ ...of(id), ...home })));
  const noteId = done(
    await keepNote(clerk, noteInput.parse({ ...of(id), words: 'Loves kelp greens' })),
  );
  const second = doing(gallery.second);
  done(await keepNote(second, noteInput.parse({ ...of(id), noteId, words: 'Loves iron reds' })));
  expect(await getCard(gallery.maker, id)).toMatchObject({
    people: [{ id: personId, name: 'June Aldous', said: 'JOON', email: null, reach: 'before six' }],
    addresses: [{ id: addressId, label: 'The boat house', state: '' }],
    notes: [{ words: 'Loves iron reds', writtenBy: 'Sunniva Rask' }],
  });
  expect((await findCollectors(gallery.clerk, 'June Ald')).map((each) => each.id)).toEqual([id]);

  const off = (part: string, partId: string) =>
    takeOff(clerk, takeOffInput.parse({ ...of(id), part, partId }));
  for (const [part, partId] of [
    ['person', personId],
    ['address', addressId],
    ['note', noteId],
  ] as const) {
    expect(await off(part, partId)).toEqual({ ok: true, value: partId });
    expect(await off(part, partId)).toEqual({ ok: false, refusal: { code: 'not_on_the_card' } });
  }
  expect(await getCard(gallery.clerk, id)).toMatchObject({ people: [], addresses: [], notes: [] });
  const told = await sql<{ facts: object }>(
    `SELECT facts FROM "AuditLine" WHERE "subjectId" = $1`,
    [id],
  );
  expect(told.length).toBeGreaterThanOrEqual(8);
  expect(JSON.stringify(told)).not.toMatch(/June|Aldous|Tide Lane|iron/);
});

test('the last that was said holds; nothing before it is changed', async () => {
  const id = await aHousehold('The Sefton house');
  const say = (said: string, saidOn: string, actor = gallery.clerk) => {
    const input = { ...of(id), to: 'text', how: 'call', said, saidOn };
    return sayConsent(doing(actor), consentInput.parse(input));
  };
  done(await say('yes', '2026-11-01'));
  done(await say('no', '2026-11-18', gallery.second));
  const { consents } = await getCard(gallery.clerk, id);
  expect(consents).toMatchObject([
    { given: false, saidOn: '2026-11-18', heardBy: 'Sunniva Rask', isAskedAnew: false },
    { given: true, saidOn: '2026-11-01', heardBy: 'Perrin Oday' },
  ]);
  expect(mayWriteTo(consents, 'text')).toBe(false);
  expect(await say('yes', '2026-11-22')).toMatchObject({ refusal: { code: 'said_in_the_future' } });
  expect(await say('yes', '2026-11-19', gallery.maker)).toMatchObject({
    refusal: { code: 'not_allowed' },
  });
});

test('what was sold and not returned is theirs, and hangs where they say', async () => {
  const clerk = doing(gallery.clerk);
  const id = await aHousehold('The Vane house');
  const heron = await aPieceHere(gallery, {
    ...{ sku: 'HE-10-CE', title: 'Heron', priceCents: 20_000n, here: 2 },
  });
  await sellNow(clerk, aSale([{ piece: heron, quantity: 1 }], { collectorId: id }));
  const [piece] = await listOwned(gallery.maker, id);
  expect(piece).toMatchObject({ title: 'Heron', quantity: 1, place: null, by: { kind: 'sale' } });
  if (piece?.by.kind !== 'sale') throw new Error('It was sold.');
  const { saleLineId } = piece.by;

  const home = { label: 'The mill', street: '1 Weir Road', city: 'Fernhollow' };
  const addressId = done(await keepAddress(clerk, addressInput.parse({ ...of(id), ...home })));
  const hung = { saleLineId, addressId, hangs: 'stairs, north wall' };
  const first = done(await keepOwned(clerk, ownedInput.parse({ ...of(id), ...hung })));
  const moved = ownedInput.parse({ ...of(id), ...hung, hangs: 'landing' });
  expect(done(await keepOwned(clerk, moved))).toBe(first);
  done(await keepOwned(clerk, ownedInput.parse({ ...of(id), title: 'A salmon, from a fair' })));
  expect(await listOwned(gallery.clerk, id)).toMatchObject([
    { title: 'Heron', place: { addressLabel: 'The mill', hangs: 'landing' } },
    { title: 'A salmon, from a fair', by: { kind: 'told' } },
  ]);
  const off = takeOffInput.parse({ ...of(id), part: 'address', partId: addressId });
  expect(await takeOff(clerk, off)).toEqual({
    ok: false,
    refusal: { code: 'pieces_hang_there', titles: ['Heron'] },
  });

  const other = await aHousehold('The Oram house');
  const stolen = ownedInput.parse({ ...of(other), saleLineId });
  expect(await keepOwned(clerk, stolen)).toMatchObject({ refusal: { code: 'not_theirs' } });
  const elsewhere = ownedInput.parse({ ...of(other), title: 'A wren', addressId });
  expect(await keepOwned(clerk, elsewhere)).toMatchObject({ refusal: { code: 'not_theirs' } });
  const lost = ownedInput.parse({ ...of(other), title: 'A wren', ownedId: first });
  expect(await keepOwned(clerk, lost)).toMatchObject({ refusal: { code: 'not_on_the_card' } });
});

test('the firm of a designer is kept with them', async () => {
  const fields = {
    requestKey: randomUUID(),
    name: 'Ida Corrin',
    kind: 'designer',
    firm: 'Corrin & Bay',
  };
  const kept = await keepCollector(doing(gallery.clerk), keepCollectorInput.parse(fields));
  if (!kept.ok) throw new Error(kept.refusal.code);
  const { collectorId } = kept.value;
  expect(await getCollector(gallery.clerk, collectorId)).toMatchObject({ firm: 'Corrin & Bay' });
  const found = await findCollectors(gallery.clerk, 'Corrin & B');
  expect(found.map((each) => each.name)).toEqual(['Ida Corrin']);
});
