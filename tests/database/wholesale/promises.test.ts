import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import { promiseTownInput } from '@/lib/wholesale/input';
import { findShopSheet } from '@/lib/wholesale/reads';
import { shopRefusalMessage } from '@/lib/wholesale/rules';
import { keepShopOrder } from '@/lib/wholesale/writes';
import { endTownPromise, promiseTown } from '@/lib/wholesale/writes/promises';
import { sql, startAfresh } from '@/tests/helpers/database';
import { aPieceHere, doing, openGallery, type OpenGallery } from '../sales/open-gallery';
import { anOrder, aShop } from './a-shop';

let gallery: OpenGallery;
let driftline: string;
let rival: string;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  await aPieceHere(gallery, { sku: 'TS-10-CI', title: 'Tern', priceCents: 18_000n, here: 4 });
  driftline = await aShop(gallery);
  rival = await aShop(gallery, { name: 'Tide & Thistle', city: 'cedar reach' });
});

function aPromise(shopId: string, over: Record<string, unknown> = {}) {
  const town = { town: 'Cedar Reach', state: 'WA', fromOn: '2026-11-01', untilOn: '' };
  return promiseTownInput.parse({ requestKey: randomUUID(), shopId, ...town, ...over });
}

test('a second shop of a promised town gets nothing, and is told whose it is', async () => {
  expect(await promiseTown(doing(gallery.clerk), aPromise(driftline))).toMatchObject({ ok: true });
  const refused = await keepShopOrder(doing(gallery.clerk), anOrder(rival, 'TS-10-CI'));
  if (refused.ok || refused.refusal.code !== 'town_is_promised') {
    return expect.unreachable('The town is promised to another.');
  }
  expect(shopRefusalMessage(refused.refusal)).toBe(
    'Cedar Reach is promised to Driftline Goods: no other shop there gets our pieces.',
  );
  expect(await keepShopOrder(doing(gallery.clerk), anOrder(driftline, 'TS-10-CI'))).toMatchObject({
    ok: true,
  });
});

test('two promises of one town never overlap, in any capitals; one after the other may stand', async () => {
  const clerk = doing(gallery.clerk);
  await promiseTown(clerk, aPromise(driftline, { untilOn: '2026-12-01' }));
  expect(await promiseTown(clerk, aPromise(rival, { town: 'CEDAR REACH' }))).toMatchObject({
    refusal: { code: 'town_is_promised', shop: 'Driftline Goods', untilOn: '2026-12-01' },
  });
  expect(await promiseTown(clerk, aPromise(rival, { fromOn: '2026-12-01' }))).toMatchObject({
    ok: true,
  });
});

test('of two people who promise a town at once one does', async () => {
  const both = await Promise.all([
    promiseTown(doing(gallery.clerk), aPromise(driftline)),
    promiseTown(doing(gallery.second), aPromise(rival)),
  ]);
  expect(both.filter((each) => each.ok)).toHaveLength(1);
  expect(both.find((each) => !each.ok)).toMatchObject({ refusal: { code: 'town_is_promised' } });
});

test('a promise that has ended keeps nobody out', async () => {
  const clerk = doing(gallery.clerk);
  const promised = await promiseTown(clerk, aPromise(driftline));
  if (!promised.ok) return expect.unreachable('The town is free.');
  const end = { requestKey: randomUUID(), promiseId: promised.value.promiseId };
  expect(await endTownPromise(clerk, end)).toMatchObject({ ok: true });
  expect(await endTownPromise(clerk, { ...end, requestKey: randomUUID() })).toMatchObject({
    refusal: { code: 'unknown_promise' },
  });
  expect(await keepShopOrder(clerk, anOrder(rival, 'TS-10-CI'))).toMatchObject({ ok: true });
  const later = await promiseTown(clerk, aPromise(rival, { fromOn: '2027-01-01' }));
  if (!later.ok) return expect.unreachable('The town is free again.');
  const back = { requestKey: randomUUID(), promiseId: later.value.promiseId };
  await endTownPromise(clerk, back);
  expect((await findShopSheet(gallery.owner, rival))?.promises).toEqual([]);
});

test('whoever may not, and a shop that is none', async () => {
  const [maker, clerk] = [doing(gallery.maker), doing(gallery.clerk)];
  expect(await promiseTown(maker, aPromise(driftline))).toMatchObject({
    refusal: { code: 'not_allowed' },
  });
  expect(await promiseTown(clerk, aPromise(randomUUID()))).toMatchObject({
    refusal: { code: 'unknown_shop' },
  });
});

test('the database itself keeps a town for one', async () => {
  const insert = (shop: string, town: string) =>
    sql(
      `insert into "TownPromise" (id, "collectorId", town, state, "fromOn")
       values (gen_random_uuid(), $1, $2, 'WA', '2026-11-01')`,
      [shop, town],
    );
  await insert(driftline, 'Cedar Reach');
  await expect(insert(rival, 'cedar REACH')).rejects.toThrow('town_is_promised_to_one');
});
