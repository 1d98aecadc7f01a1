import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { colourways } from '@/seed/pictures/colourways';
import { motifs } from '@/seed/pictures/motifs';
import { renderColourTile, renderSketch } from '@/seed/pictures/papers';
import { renderPiece } from '@/seed/pictures/piece';

const small = { seed: 1, widthPx: 240 };

/** The spread of light and dark in the middle of a picture, as a standard deviation of 0 to 255. */
async function spread(bytes: Buffer): Promise<number> {
  const { channels } = await sharp(bytes).flatten({ background: '#ffffff' }).greyscale().stats();
  return channels[0]?.stdev ?? 0;
}

test('there are at least fourteen motifs, each with its own key and title', () => {
  expect(motifs.length).toBeGreaterThanOrEqual(14);
  expect(new Set(motifs.map((motif) => motif.key)).size).toBe(motifs.length);
  expect(new Set(motifs.map((motif) => motif.title)).size).toBe(motifs.length);
});

test.each(motifs.map((motif) => motif.key))('%s can be seen in the clay', async (motif) => {
  const order = { ...small, motif, kind: 'relief_tile', colourway: 'celadon' } as const;
  const picture = await renderPiece(order);
  const read = await sharp(picture.bytes).metadata();
  expect(read).toMatchObject({ format: 'webp', width: picture.widthPx, height: picture.heightPx });
  expect(await spread(picture.bytes)).toBeGreaterThan(12);
});

describe.each([
  'relief_tile',
  'plaque',
  'wall_panel',
  'lamp',
  'platter',
  'planter',
  'bowl',
] as const)('a %s', (kind) => {
  const order = { ...small, motif: 'heron', kind, colourway: 'tenmoku' };

  test('stands clear of its ground', async () => {
    const { bytes } = await renderPiece(order);
    const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
    const alphaAt = (x: number, y: number) => data[(y * info.width + x) * 4 + 3] ?? -1;
    expect(info.channels).toBe(4);
    expect(alphaAt(0, info.height - 1)).toBeLessThan(40);
    expect(alphaAt(Math.round(info.width / 2), Math.round(info.height * 0.6))).toBe(255);
  });

  test('is the same again for the same seed, and another for another', async () => {
    const [once, again, other] = await Promise.all([
      renderPiece(order),
      renderPiece(order),
      renderPiece({ ...order, seed: 2 }),
    ]);
    expect(once.bytes.equals(again.bytes)).toBe(true);
    expect(once.bytes.equals(other.bytes)).toBe(false);
  });
});

test('a piece keeps the proportion it was ordered in', async () => {
  const order = { ...small, motif: 'fog', kind: 'wall_panel', colourway: 'ash' } as const;
  const { widthPx, heightPx } = await renderPiece({ ...order, proportion: 2 });
  expect(widthPx / heightPx).toBeGreaterThan(1.6);
});

test.each([
  ['fern', 'amber'],
  ['barnacle', 'moon'],
  ['star', 'copper'],
])('a picture of %s, full of detail, is at most 120 kB', async (motif, colourway) => {
  const { bytes, widthPx } = await renderPiece({ motif, colourway, kind: 'relief_tile', seed: 1 });
  expect(widthPx).toBe(900);
  expect(bytes.length).toBeLessThan(120_000);
});

test('a motif or colourway that does not exist is named', async () => {
  const order = { ...small, motif: 'gull', kind: 'bowl', colourway: 'ash' } as const;
  await expect(renderPiece(order)).rejects.toThrow('There is no motif gull.');
  const other = { ...order, motif: 'tern', colourway: 'gold' };
  await expect(renderPiece(other)).rejects.toThrow('There is no colourway gold.');
});

test('a sketch is pencil on pale paper', async () => {
  const { bytes } = await renderSketch({ motif: 'kelp', seed: 'B', widthPx: 300 });
  const { channels } = await sharp(bytes).greyscale().stats();
  expect(channels[0]?.mean ?? 0).toBeGreaterThan(190);
  expect(await spread(bytes)).toBeGreaterThan(8);
});

test.each(colourways.map((colourway) => colourway.key))('the tile of %s is fired', async (key) => {
  const { bytes } = await renderColourTile(key, 1, 240);
  expect(await spread(bytes)).toBeGreaterThan(5);
});
