import sharp from 'sharp';
import type { Doer } from '@/lib/access/rules';
import { writeBatchInput } from '@/lib/commissions/input/colours/batches';
import { writeBatch } from '@/lib/commissions/writes/colours/batches';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import {
  addGlazeInput,
  addTileInput,
  changeGlazeInput,
  writeProofInput,
  writeRecipeInput,
} from '@/lib/glazes/input';
import { addGlaze, changeGlaze } from '@/lib/glazes/writes/glazes';
import { writeProof } from '@/lib/glazes/writes/proofs';
import { writeRecipe } from '@/lib/glazes/writes/recipes';
import { addTile } from '@/lib/glazes/writes/tiles';
import { db } from '@/lib/platform/db/client';
import { newId } from '@/lib/platform/new-id';
import { done } from '@/seed/done';
import { renderColourTile } from '@/seed/pictures/papers';
import { gallery } from '@/seed/scenario/gallery';
import { glazes, laboratory, type DemoGlaze, type DemoTile } from '@/seed/scenario/glazes';
import type { SetUp } from '@/seed/set-up';

type Demo = { today: Day; setUp: SetUp };

/** How many days ago the book was begun. */
const begunDaysAgo = 500;

/** The glaze book, through the product's own writes; the clay bodies are there already. */
export async function playGlazes(demo: Demo): Promise<void> {
  for (const glaze of glazes) await playGlaze(demo, glaze);
}

function makerAt({ today, setUp }: Demo, daysAgo: number): Doer {
  const day = addDays(today, -daysAgo);
  return { actor: setUp.maker, at: instantOf(day, '16:00', gallery.timeZone) };
}

async function playGlaze(demo: Demo, glaze: DemoGlaze): Promise<void> {
  const { name, cone, coats, note, lab, recipes } = glaze;
  const [first, ...later] = recipes;
  const looks = { name, cone, coats, note, lab };
  const pictures = { raw: await rawTile(glaze.raw), fired: await firedTile(glaze, name) };
  const { base = '', additions = '' } = first ?? {};
  const form = { requestKey: newId(), ...looks, ...pictures, base, additions };
  const { glazeId } = done(await addGlaze(makerAt(demo, begunDaysAgo), addGlazeInput.parse(form)));
  for (const [at, recipe] of later.entries()) {
    const version = { requestKey: newId(), glazeId, ...recipe };
    done(await writeRecipe(makerAt(demo, 110 - at), writeRecipeInput.parse(version)));
  }
  const written = await db().glazeRecipe.findMany({
    where: { glazeId },
    select: { id: true, version: true },
    orderBy: { version: 'asc' },
  });
  await playTests(demo, glaze, { glazeId, recipes: written });
  for (const tile of glaze.tiles) {
    await playTile(demo, glaze, { tile, glazeId, recipeId: written.at(-1)?.id ?? '' });
  }
  if (glaze.bucket) {
    const { number, daysAgo, weight } = glaze.bucket;
    const inBook = `${glazeId}/${written.at(-1)?.id ?? ''}`;
    const mixedOn = addDays(demo.today, -daysAgo);
    const bucket = { requestKey: newId(), number, inBook, mixedOn, weightG: weight };
    done(await writeBatch(makerAt(demo, daysAgo), writeBatchInput.parse(bucket)));
  }
  if (glaze.endedDaysAgo !== undefined) {
    const endedOn = addDays(demo.today, -glaze.endedDaysAgo);
    const ended = { requestKey: newId(), glazeId, ...looks, endedOn };
    done(await changeGlaze(makerAt(demo, glaze.endedDaysAgo), changeGlazeInput.parse(ended)));
  }
}

async function playTests(
  demo: Demo,
  { tests }: DemoGlaze,
  of: { glazeId: string; recipes: readonly { id: string; version: number }[] },
): Promise<void> {
  for (const { version, daysAgo, ...found } of tests) {
    const recipeId = of.recipes.find((each) => each.version === version)?.id;
    const testedOn = addDays(demo.today, -daysAgo);
    const proof = { requestKey: newId(), glazeId: of.glazeId, recipeId, laboratory, testedOn };
    done(await writeProof(makerAt(demo, daysAgo), writeProofInput.parse({ ...proof, ...found })));
  }
}

async function playTile(
  demo: Demo,
  glaze: DemoGlaze,
  { tile, glazeId, recipeId }: { tile: DemoTile; glazeId: string; recipeId: string },
): Promise<void> {
  const body = await db().clayBody.findFirst({ orderBy: { name: 'desc' }, select: { id: true } });
  const { daysAgo, ...seen } = tile;
  const form = {
    ...{ requestKey: newId(), glazeId, recipeId, bodyId: body?.id ?? '', cone: glaze.cone },
    ...{ madeOn: addDays(demo.today, -daysAgo), ...seen },
    fired: await firedTile(glaze, `${glaze.name} ${daysAgo}`),
    raw: await rawTile(glaze.raw),
  };
  done(await addTile(makerAt(demo, daysAgo), addTileInput.parse(form)));
}

async function firedTile({ colourway }: DemoGlaze, seed: string): Promise<Blob> {
  const { bytes } = await renderColourTile(colourway, seed);
  return new Blob([new Uint8Array(bytes)]);
}

/** A tile with dry glaze on it: flat and chalky, whatever it will be. */
async function rawTile(colour: string): Promise<Blob> {
  const drawn = `<svg xmlns="http://www.w3.org/2000/svg" width="640" height="640">
    <filter id="dust"><feTurbulence type="fractalNoise" baseFrequency="0.9" numOctaves="3"/>
      <feColorMatrix values="0 0 0 0 0.3  0 0 0 0 0.25  0 0 0 0 0.2  0 0 0 0.35 -0.1"/></filter>
    <rect width="640" height="640" fill="#efe9df"/>
    <rect x="36" y="36" width="568" height="568" rx="10" fill="${colour}"/>
    <rect x="36" y="36" width="568" height="568" rx="10" filter="url(#dust)"/>
  </svg>`;
  return new Blob([new Uint8Array(await sharp(Buffer.from(drawn)).png().toBuffer())]);
}
