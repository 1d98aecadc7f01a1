import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import type { PageDoer } from '@/lib/access/rules';
import {
  askForChangesInput,
  showColourTileInput,
  showSketchInput,
  signYesInput,
} from '@/lib/commissions/input/colours/showing';
import { areasOf } from '@/lib/commissions/reads/colours/areas';
import { readShown } from '@/lib/commissions/reads/colours/shown';
import { approve, signYes } from '@/lib/commissions/writes/colours/approve';
import { writeBatch } from '@/lib/commissions/writes/colours/batches';
import { askForChanges } from '@/lib/commissions/writes/colours/changes';
import { showColourTile, showSketch, type Shown } from '@/lib/commissions/writes/colours/show';
import { giveTwin, measureFired } from '@/lib/commissions/writes/colours/tiles';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { aPicture, aYes, agreed, asked, dayAt, done, on, sketched, tiled } from './a-commission';

let gallery: OpenGallery;
let bodyId: string;
const day = '2026-05-12';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  ({ id: bodyId } = await db().clayBody.create({ data: { name: 'Shore white' } }));
});

function code(result: { ok: boolean; refusal?: { code: string } }): string {
  return result.ok ? 'done' : (result.refusal?.code ?? 'nothing');
}

/** A collector on their own page. */
async function atPage(commissionId: string): Promise<PageDoer> {
  const { id: linkId } = await db().collectorLink.create({
    data: {
      ...{ commissionId, forName: 'Marit Oland', madeById: gallery.owner.id },
      tokenSha256: randomUUID().replaceAll('-', '').repeat(2),
      ...{ madeAt: dayAt(day), runsOutAt: dayAt('2026-08-12') },
    },
  });
  return { page: { linkId, commissionId, name: 'Marit Oland' }, at: dayAt(day) };
}

const aName = { signedName: 'Marit Oland', signedAs: 'typed' };

function aSignedYes(commissionId: string, what: 'sketch' | 'colour_tile', shown: Shown, over = {}) {
  const { id: shownId, contentSha256 } = shown;
  const about = { requestKey: randomUUID(), commissionId, what, shownId, contentSha256 };
  return signYesInput.parse({ ...about, ...aName, ...over });
}

function changesTo(commissionId: string, shown: Shown, over = {}) {
  const { id: shownId, contentSha256 } = shown;
  return askForChangesInput.parse({
    ...{ requestKey: randomUUID(), commissionId, what: 'sketch', shownId, contentSha256 },
    ...{ words: 'The left heron looks back.', askedBy: 'Marit Oland', ...over },
  });
}

async function aTile(commissionId: string, over: Record<string, unknown> = {}) {
  return showColourTile(
    on(gallery.maker, day),
    showColourTileInput.parse({
      ...{ requestKey: randomUUID(), commissionId, picture: await aPicture(7), shownOn: day },
      ...{ glazes: 'celadon over iron slip', coats: '3', cone: '6', bodyId, ...over },
    }),
  );
}

async function aSketch(commissionId: string, over: Record<string, unknown> = {}) {
  const form = { requestKey: randomUUID(), commissionId, picture: await aPicture(9), shownOn: day };
  return done(
    await showSketch(on(gallery.maker, day), showSketchInput.parse({ ...form, ...over })),
  );
}

describe('a yes binds to everything that was shown', () => {
  test('another word is another content, and the old yes does not hold for it', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const first = await aSketch(commissionId, { note: 'One to ten.' });
    const second = await aSketch(commissionId, { note: 'One to ten!' });
    expect(first.fileSha256).toBe(second.fileSha256);
    expect(first.contentSha256).not.toBe(second.contentSha256);
    const mixed = aYes(
      commissionId,
      'sketch',
      { ...second, contentSha256: first.contentSha256 },
      day,
    );
    expect(code(await approve(on(gallery.maker, day), mixed))).toBe('other_picture');
  });

  test('version 2 is not approved while version 3 was just shown: told, nothing approved', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const b = await sketched(gallery.maker, commissionId, day);
    await sketched(gallery.maker, commissionId, day);
    const page = await atPage(commissionId);
    const said = await signYes(page, aSignedYes(commissionId, 'sketch', b));
    expect(said).toMatchObject({ refusal: { code: 'newer_shown', label: 'sketch B' } });
    expect(await db().approval.count({ where: { commissionId } })).toBe(0);
    expect(await db().signature.count({ where: { commissionId } })).toBe(0);
  });

  test('two people decide on one sketch at the same moment: one answer is kept', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const sketch = await sketched(gallery.maker, commissionId, day);
    const [one, other] = [await atPage(commissionId), await atPage(commissionId)];
    const both = await Promise.all([
      signYes(one, aSignedYes(commissionId, 'sketch', sketch)),
      askForChanges(other, changesTo(commissionId, sketch)),
    ]);
    const yes = await db().approval.count({ where: { commissionId } });
    const changes = await db().changeAsked.count({ where: { commissionId } });
    // Whoever came first stands; changes may be followed by a yes, never the other way round.
    expect(yes).toBe(1);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1 + changes);
    if (changes === 0) expect(code(both[1])).toBe('approved_already');
  });

  test('their name stands under the same bytes, with who, when and how', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const sketch = await sketched(gallery.maker, commissionId, day);
    const page = await atPage(commissionId);
    done(await signYes(page, aSignedYes(commissionId, 'sketch', sketch), 'Safari on an iPhone'));
    const yes = await db().approval.findFirstOrThrow({
      where: { commissionId },
      include: { signature: true },
    });
    expect(yes).toMatchObject({ how: 'on_their_page', recordedById: null });
    expect(yes.signature).toMatchObject({
      ...{ name: 'Marit Oland', contentSha256: sketch.contentSha256, linkId: page.page.linkId },
      device: 'Safari on an iPhone',
    });
  });

  test('somebody else’s page approves nothing here', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const other = await asked(gallery.maker, day);
    const sketch = await sketched(gallery.maker, commissionId, day);
    const page = await atPage(other.commissionId);
    expect(code(await signYes(page, aSignedYes(commissionId, 'sketch', sketch)))).toBe(
      'unknown_commission',
    );
  });
});

describe('a picture on a phone is no approval of a colour', () => {
  test('it takes the twin in the hand, and that they say they looked at it', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const tile = done(await aTile(commissionId));
    const page = await atPage(commissionId);
    const yes = (over = {}) => signYes(page, aSignedYes(commissionId, 'colour_tile', tile, over));
    expect(code(await yes())).toBe('not_seen_in_hand');
    expect(code(await yes({ seenInHand: 'yes' }))).toBe('twin_not_given');
    const maker = on(gallery.maker, day);
    const given = { commissionId, tileId: tile.id, how: 'by mail', givenOn: day } as const;
    done(await giveTwin(maker, { requestKey: randomUUID(), ...given }));
    expect(code(await giveTwin(maker, { requestKey: randomUUID(), ...given }))).toBe(
      'given_already',
    );
    expect(code(await yes({ seenInHand: 'yes', light: 'by day' }))).toBe('done');
  });

  test('a tile keeps its range, and the areas go from dark to light', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    await aSketch(commissionId, { areaName1: 'Water', areaPlace1: 'lower_middle' });
    const range = { light: '70 -4 6', dark: '48, -5, 7' };
    done(await aTile(commissionId, { ...range, middle: '60 -4 6', forAreas: 'water' }));
    done(await aTile(commissionId, { middle: '30 -4 6', forAreas: 'Water' }));
    const [water] = areasOf(await readShown(db(), commissionId));
    expect(water?.name).toBe('Water');
    expect(water?.tiles.map(({ label }) => label)).toEqual(['2', '1']);
    expect(water?.tiles[1]?.tile?.shades.map(({ shade, lab }) => [shade, lab?.[0]])).toEqual([
      ['light', 70],
      ['middle', 60],
      ['dark', 48],
    ]);
  });

  test('a bucket of glaze is kept for one commission', async () => {
    const bucket = {
      requestKey: randomUUID(),
      number: 'B-17',
      glaze: 'celadon',
      mixedOn: day,
    } as const;
    const maker = on(gallery.maker, day);
    const { batchId } = done(await writeBatch(maker, { ...bucket, weightG: 4_000, note: '' }));
    const again = { ...bucket, requestKey: randomUUID(), weightG: null, note: '' };
    expect(code(await writeBatch(maker, again))).toBe('batch_number_taken');
    const [one, other] = [await asked(gallery.maker, day), await asked(gallery.maker, day)];
    done(await aTile(one.commissionId, { batchId }));
    done(await aTile(one.commissionId, { batchId }));
    expect(await aTile(other.commissionId, { batchId })).toMatchObject({
      refusal: { code: 'batch_reserved', number: one.number },
    });
    expect(await db().colourTile.count({ where: { commissionId: other.commissionId } })).toBe(0);
  });

  test('a fired part is held against the nearest of the approved range, with the gallery’s limit', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const tile = done(await aTile(commissionId, { middle: '50 2.5 0', light: '61 2.5 0' }));
    const maker = on(gallery.maker, day);
    const part = { commissionId, tileId: tile.id, where: 'Part 14, sky' };
    const measure = (lab: readonly [string, string, string]) =>
      measureFired(maker, { requestKey: randomUUID(), ...part, lab });
    expect(code(await measure(['50', '3.1736', '0.5854']))).toBe('not_approved_yet');
    done(await approve(maker, aYes(commissionId, 'colour_tile', tile, day)));
    // Sharma, Wu and Dalal, pair 21: 1.0000.
    expect(done(await measure(['50', '3.1736', '0.5854']))).toMatchObject({
      ...{ deltaE: '1', nearest: 'middle', isWithin: true },
    });
    // Pair 19 of the same table: 31.9030 to the middle; the light one is nearer or further, never within.
    expect(done(await measure(['56', '-27', '-3'])).isWithin).toBe(false);
    const bare = await tiled(gallery.maker, commissionId, day);
    done(await approve(maker, aYes(commissionId, 'colour_tile', bare, day)));
    const unmeasured = { requestKey: randomUUID(), ...part, tileId: bare.id };
    expect(code(await measureFired(maker, { ...unmeasured, lab: ['50', '0', '0'] }))).toBe(
      'not_measured',
    );
  });
});

describe('changes are asked for by spots and words', () => {
  test('the spots are kept in their order, and nothing at all is refused', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const sketch = await sketched(gallery.maker, commissionId, day);
    const page = await atPage(commissionId);
    const bare = changesTo(commissionId, sketch, { words: '' });
    expect(code(await askForChanges(page, bare))).toBe('nothing_asked');
    const spots = { spotWords1: 'Turn it', spotX1: '120', spotY1: '880', spotWords2: 'Less sky' };
    const form = changesTo(commissionId, sketch, { words: '', ...spots });
    expect(done(await askForChanges(page, form))).toMatchObject({ round: 1, feeCents: '0' });
    const [shown] = await readShown(db(), commissionId);
    expect(shown?.changes[0]?.spots).toEqual([
      { xPermille: 120, yPermille: 880, words: 'Turn it' },
      { xPermille: 500, yPermille: 500, words: 'Less sky' },
    ]);
  });

  test('rounds beyond those included are told with their price, agreed to, and become a change order', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    await agreed(gallery, { commissionId, day, priceCents: 1_000_000n, depositCents: 0n });
    const page = await atPage(commissionId);
    for (const round of [1, 2]) {
      const sketch = await sketched(gallery.maker, commissionId, day);
      const told = done(await askForChanges(page, changesTo(commissionId, sketch)));
      expect(told).toMatchObject({ round, feeCents: '0' });
    }
    const third = await sketched(gallery.maker, commissionId, day);
    expect(await askForChanges(page, changesTo(commissionId, third))).toMatchObject({
      refusal: { code: 'round_costs', round: 3, feeCents: 15_000n },
    });
    const form = changesTo(commissionId, third, { agreesFee: 'yes' });
    expect(done(await askForChanges(page, form))).toMatchObject({ round: 3, feeCents: '15000' });
    expect(done(await askForChanges(page, form))).toMatchObject({ round: 3 });
    const orders = await db().changeOrder.findMany({
      where: { commissionId },
      include: { signed: { include: { signature: true } } },
    });
    expect(orders).toHaveLength(1);
    expect(orders[0]).toMatchObject({ priceCents: 15_000n, kind: 'design_fee', offeredById: null });
    expect(orders[0]?.signed?.signature.linkId).toBe(page.page.linkId);
  });
});
