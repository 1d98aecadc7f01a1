import { randomUUID } from 'node:crypto';
import sharp from 'sharp';
import { beforeAll, expect, test } from 'vitest';
import {
  addGlazeInput,
  addTileInput,
  changeGlazeInput,
  tellTileInput,
  writeProofInput,
  writeRecipeInput,
} from '@/lib/glazes/input';
import { findGlaze, listGlazes } from '@/lib/glazes/reads/book';
import { findTile, listGlazeNames, listTiles, readTileChoices } from '@/lib/glazes/reads/tiles';
import { addGlaze, changeGlaze } from '@/lib/glazes/writes/glazes';
import { writeProof } from '@/lib/glazes/writes/proofs';
import { writeRecipe } from '@/lib/glazes/writes/recipes';
import { addTile, tellTile } from '@/lib/glazes/writes/tiles';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { aStudio, type TestStudio } from '@/tests/database/studio/a-studio';
import { sql } from '@/tests/helpers/database';

let studio: TestStudio;
beforeAll(async () => {
  studio = await aStudio();
});
const today = '2026-05-04';
const code = (result: { ok: boolean; refusal?: { code: string } }) =>
  result.ok ? 'ok' : result.refusal?.code;

async function aPicture(background: string): Promise<Blob> {
  const drawn = sharp({ create: { width: 8, height: 8, channels: 3, background } });
  return new Blob([new Uint8Array(await drawn.png().toBuffer())]);
}

const aGlaze = (over: object = {}) =>
  addGlazeInput.parse({
    ...{ requestKey: randomUUID(), name: 'Fog over iron', cone: '6', coats: '3', lab: '62 -7 10' },
    ...{ base: 'Feldspar 600\nSilica 200\nWhiting 200', additions: 'Red iron oxide 20', ...over },
  });
const theGlaze = async () => {
  const [glaze] = await listGlazes(studio.maker.actor, today);
  if (!glaze) throw new Error('No glaze is in the book.');
  return glaze;
};

test('a glaze is written down once with its first recipe; refused in order', async () => {
  const notOne = { name: 'Fog', base: 'Silica 0' };
  const notAPicture = new Blob(['wall']);
  expect(
    (
      await Promise.all([
        addGlaze(studio.gallery, aGlaze({ raw: notAPicture })),
        addGlaze(studio.maker, aGlaze({ raw: notAPicture, ...notOne })),
        addGlaze(studio.maker, aGlaze(notOne)),
        addGlaze(studio.maker, aGlaze({ name: 'Fog', base: '' })),
      ])
    ).map(code),
  ).toEqual(['not_allowed', 'picture_not_kept', 'recipe_not_taken', 'recipe_not_taken']);
  expect(await listGlazes(studio.maker.actor, today)).toEqual([]);

  const form = aGlaze({ fired: await aPicture('#7a8f80') });
  const both = await Promise.all([addGlaze(studio.maker, form), addGlaze(studio.maker, form)]);
  expect(both[0]).toEqual(both[1]);
  expect(both.map(code)).toEqual(['ok', 'ok']);
  expect(code(await addGlaze(studio.owner, aGlaze({ name: 'FOG over Iron' })))).toBe(
    'glaze_name_taken',
  );
  expect(await theGlaze()).toMatchObject({
    ...{ name: 'Fog over iron', cone: '6', coats: 3, lab: [62, -7, 10], raw: null, tiles: 0 },
    fired: { widthPx: 8, heightPx: 8 },
    food: { use: 'not_tested' },
    recipes: [
      {
        version: 1,
        materials: [
          { material: 'Feldspar', percent: '60', isAddition: false },
          { material: 'Silica', percent: '20', isAddition: false },
          { material: 'Whiting', percent: '20', isAddition: false },
          { material: 'Red iron oxide', percent: '2', isAddition: true },
        ],
      },
    ],
  });
});

const aProof = async (over: object = {}) => {
  const { id: glazeId, recipes } = await theGlaze();
  return writeProofInput.parse({
    ...{ requestKey: randomUUID(), glazeId, recipeId: recipes.at(-1)?.id, ware: 'cup_or_mug' },
    ...{ laboratory: 'Fenwick Water', reportNumber: 'FW-118', testedOn: '2026-05-03' },
    ...{ lead: '0.1 <0.02 0.1 0.1 0.1 0.1', cadmium: '0 0 0 0 0 0', ...over },
  });
};

test('a leach test speaks for its own recipe; refused in order', async () => {
  const fewer = { lead: '0.1 0.1', cadmium: '0 0' };
  const later = { ...fewer, testedOn: '2026-05-05' };
  const refused = [
    await writeProof(studio.books, await aProof(later)),
    await writeProof(studio.maker, await aProof({ ...later, recipeId: randomUUID() })),
    await writeProof(studio.maker, await aProof(later)),
    await writeProof(studio.maker, await aProof(fewer)),
  ];
  expect(refused.map(code)).toEqual([
    ...['not_allowed', 'unknown_recipe', 'test_not_taken', 'test_not_taken'],
  ]);
  const form = await aProof();
  const twice = [await writeProof(studio.maker, form), await writeProof(studio.maker, form)];
  expect(twice.map((each) => each.ok && each.value.isWithin)).toEqual([true, true]);
  const { recipes, food } = await theGlaze();
  expect(food).toMatchObject({ use: 'proven', on: ['cup_or_mug'] });
  expect(food.words).toBe('for food on cups and mugs: tested 3 May 2026 by Fenwick Water');
  expect(recipes[0]?.proofs).toHaveLength(1);
  expect(recipes[0]?.proofs[0]?.readings[1]).toEqual({ lead: '0.02', cadmium: '0' });
});

const aRecipe = async (over: object = {}) =>
  writeRecipeInput.parse({
    ...{ requestKey: randomUUID(), glazeId: (await theGlaze()).id, note: 'another feldspar' },
    ...{ base: 'Feldspar 58\nSilica 22\nWhiting 20', additions: 'Red iron oxide 2', ...over },
  });

test('another version stands beside the first, and is not for food until it is tested', async () => {
  const same = { base: 'Feldspar 60\nSilica 20\nWhiting 20', additions: 'Red iron oxide 2' };
  const refused = [
    await writeRecipe(studio.gallery, await aRecipe(same)),
    await writeRecipe(studio.maker, await aRecipe({ glazeId: randomUUID(), base: '' })),
    await writeRecipe(studio.maker, await aRecipe({ base: '' })),
    await writeRecipe(studio.maker, await aRecipe(same)),
  ];
  expect(refused.map(code)).toEqual([
    ...['not_allowed', 'unknown_glaze', 'recipe_not_taken', 'recipe_is_the_same'],
  ]);
  const two = await Promise.all([
    writeRecipe(studio.maker, await aRecipe()),
    writeRecipe(studio.owner, await aRecipe({ base: 'Feldspar 56\nSilica 24\nWhiting 20' })),
  ]);
  expect(two.map((each) => (each.ok ? each.value.version : 0)).toSorted()).toEqual([2, 3]);
  const glaze = await theGlaze();
  expect(glaze.food.use).toBe('not_tested');
  expect(glaze.recipes.map(({ version, food }) => [version, food.use])).toEqual([
    [3, 'not_tested'],
    [2, 'not_tested'],
    [1, 'proven'],
  ]);
  expect(await listGlazeNames(studio.gallery.actor, today)).toMatchObject([
    { name: 'Fog over iron', recipes: [{ version: 3 }, { version: 2 }, { version: 1 }] },
  ]);
});

test('what is known of a glaze changes; a picture stays where no other is chosen', async () => {
  const { id: glazeId, fired } = await theGlaze();
  const changing = (over: object = {}) =>
    changeGlazeInput.parse({
      ...{ requestKey: randomUUID(), glazeId, name: 'Fog', cone: '5', coats: '2', ...over },
    });
  await addGlaze(studio.maker, aGlaze({ name: 'Kelp', base: '', additions: '' }));
  const refused = [
    await changeGlaze(studio.books, changing({ glazeId: randomUUID() })),
    await changeGlaze(studio.maker, changing({ glazeId: randomUUID(), name: 'kelp' })),
    await changeGlaze(studio.maker, changing({ name: 'kelp' })),
  ];
  expect(refused.map(code)).toEqual(['not_allowed', 'unknown_glaze', 'glaze_name_taken']);
  expect(code(await changeGlaze(studio.maker, changing({ endedOn: '2026-05-01' })))).toBe('ok');
  expect(await findGlaze(studio.gallery.actor, glazeId, today)).toMatchObject({
    ...{ name: 'Fog', cone: '5', coats: 2, lab: null, fired, endedOn: '2026-05-01' },
  });
  const names = async (on: typeof today) =>
    (await listGlazeNames(studio.gallery.actor, on)).map(({ name }) => name);
  expect(await names(today)).toEqual(['Kelp']);
  expect(code(await changeGlaze(studio.maker, changing({ cone: '6' })))).toBe('ok');
  expect(await names(today)).toEqual(['Fog', 'Kelp']);
});

async function aFiring(cone: string, isOpened: boolean): Promise<string> {
  const kiln = await db().kiln.upsert({
    where: { name: 'the large kiln' },
    update: {},
    create: {
      ...{ name: 'the large kiln', insideHeightUm: 685_000, shelfWidthUm: 530_000 },
      ...{ shelfDepthUm: 530_000, shelfThickUm: 19_000, shelves: 6, powerW: 11_520 },
      ...{ centsPerKwh: '15', cones: ['6', '04'] },
    },
  });
  const { id: staffId } = studio.maker.actor;
  const { at } = studio.maker;
  const on = new Date('2026-05-02');
  const { id: firingId } = await db().firing.create({
    data: {
      ...{ kilnId: kiln.id, cone, peg: 'glaze', schedule: {}, plannedOn: on },
      ...{ madeById: staffId, at },
    },
  });
  if (!isOpened) return firingId;
  await db().firingLit.create({ data: { firingId, litOn: on, at, staffId } });
  await db().firingOpened.create({
    data: {
      ...{ firingId, openedOn: on, at, celsius: 60, wattHours: 70_000, isMetered: false },
      ...{ costCents: 1_050n, staffId },
    },
  });
  return firingId;
}

test('a test tile gets the next number and is told of later; refused in order', async () => {
  const glaze = (await listGlazes(studio.maker.actor, today)).find(({ name }) => name === 'Fog');
  const body = await db().clayBody.create({ data: { name: 'Buff stoneware' } });
  const [six, four, waiting] = [
    await aFiring('6', true),
    await aFiring('04', true),
    await aFiring('6', false),
  ];
  const aTile = (over: object = {}) =>
    addTileInput.parse({
      ...{ requestKey: randomUUID(), glazeId: glaze?.id, recipeId: glaze?.recipes[0]?.id },
      ...{ bodyId: body.id, cone: '6', coats: '3', madeOn: '2026-05-02', ...over },
    });
  const wrong = [
    { glazeId: randomUUID() },
    { recipeId: randomUUID() },
    { bodyId: randomUUID() },
    { firingId: waiting },
    { firingId: four },
    { madeOn: '2026-05-09' },
  ];
  const codes: (string | undefined)[] = [];
  for (const [at] of wrong.entries()) {
    const over = Object.assign({}, ...wrong.slice(at).toReversed()) as object;
    codes.push(code(await addTile(studio.maker, aTile(over))));
  }
  expect(codes).toEqual([
    ...['unknown_glaze', 'unknown_recipe', 'unknown_body'],
    ...['unknown_firing', 'firing_of_another_cone', 'day_to_come'],
  ]);
  expect(code(await addTile(studio.gallery, aTile()))).toBe('not_allowed');
  const form = aTile();
  const added = [await addTile(studio.maker, form), await addTile(studio.maker, form)];
  expect(added[0]).toEqual(added[1]);
  const number = added[0]?.ok ? added[0].value.number : 0;
  const raw = await findTile(studio.gallery.actor, number);
  expect(raw).toMatchObject({ glaze: 'Fog', recipeVersion: 3, body: 'Buff stoneware', lab: null });

  const telling = (over: object = {}) =>
    tellTileInput.parse({
      ...{ requestKey: randomUUID(), tileId: raw?.id, firingId: six, lab: '60 -7 11' },
      ...{ note: 'breaks brown on edges', ...over },
    });
  const refused = [
    await tellTile(studio.gallery, telling({ tileId: randomUUID() })),
    await tellTile(studio.maker, telling({ tileId: randomUUID() })),
    await tellTile(studio.maker, telling({ firingId: waiting })),
    await tellTile(studio.maker, telling({ firingId: four })),
  ];
  expect(refused.map(code)).toEqual([
    ...['not_allowed', 'unknown_tile', 'unknown_firing', 'firing_of_another_cone'],
  ]);
  const fired = await aPicture('#5f6f66');
  expect(code(await tellTile(studio.maker, telling({ fired })))).toBe('ok');
  expect(await listTiles(studio.gallery.actor, glaze?.id ?? '')).toMatchObject([
    { number, lab: [60, -7, 11], fired: { widthPx: 8 }, note: 'breaks brown on edges' },
  ]);
  const { firings, bodies } = await readTileChoices(studio.maker.actor);
  expect(firings.map(({ id }) => id).toSorted()).toEqual([six, four].toSorted());
  expect(bodies).toEqual([{ id: body.id, name: 'Buff stoneware' }]);
});

test('the database keeps recipes whole and tests as they were written', async () => {
  const held = async (statement: string, values: unknown[] = []) =>
    sql(statement, values).then(
      () => null,
      (error: unknown) => constraintOf(error),
    );
  const { id: glazeId } = await theGlaze();
  const { id: staffId } = studio.maker.actor;
  const notWhole = `WITH recipe AS (INSERT INTO "GlazeRecipe" (id, "glazeId", version, "staffId", at)
      VALUES (gen_random_uuid(), $1::uuid, 9, $2::uuid, now()) RETURNING id)
    INSERT INTO "GlazeRecipeMaterial" ("recipeId", position, material, percent)
      SELECT id, 1, 'Silica', 99.999 FROM recipe`;
  expect(await held(notWhole, [glazeId, staffId])).toBe('base_is_a_hundred');
  expect(await held(`UPDATE "GlazeRecipe" SET note = 'x'`)).toBe('never_changed');
  expect(await held(`DELETE FROM "GlazeProof"`)).toBe('never_changed');
  expect(await held(`UPDATE "GlazeRecipeMaterial" SET percent = 1`)).toBe('never_changed');
  expect(await held(`UPDATE "Glaze" SET coats = 0`)).toBe('glaze_is_laid_on');
  expect(await held(`UPDATE "TestTile" SET cone = ''`)).toBe('tile_is_laid_on');
});
