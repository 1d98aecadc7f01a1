import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { heicSize } from '@/lib/files/rules/heic-size';
import { unfoldHeic } from '@/lib/files/unfold-heic';
import { preparePicture } from '@/lib/files/writes';

// 96 × 64 pixels of moss green with a red corner at the upper left; made with heif-enc from a JPEG that
// says by whom and where it was taken.
const photo = Uint8Array.from(readFileSync(join(import.meta.dirname, 'pictures/with-place.heic')));
// 3000 × 2000 pixels of one colour, so that it is small and unfolds to 24 MB.
const large = Uint8Array.from(readFileSync(join(import.meta.dirname, 'pictures/large.heic')));
const memoryBytesMost = 512 * 1024 * 1024;
const refused = (code: string) => ({ ok: false, refusal: { code } });

function placeOf(bytes: Uint8Array, words: string): number {
  return Buffer.from(bytes).indexOf(words);
}

/** The photograph with another size written into its head. */
function saying(widthPx: number, heightPx: number): Uint8Array {
  const forged = Uint8Array.from(photo);
  const at = placeOf(forged, 'ispe');
  const view = new DataView(forged.buffer);
  view.setUint32(at + 8, widthPx);
  view.setUint32(at + 12, heightPx);
  return forged;
}

describe('a HEIC picture', () => {
  test('becomes a JPEG, with nothing left of where it was taken', async () => {
    expect(placeOf(photo, 'Saltwood')).toBeGreaterThan(0);
    const prepared = await preparePicture(photo);
    expect(prepared).toMatchObject({
      ok: true,
      value: { mediaType: 'image/jpeg', widthPx: 96, heightPx: 64 },
    });
    if (!prepared.ok) return;
    const { bytes } = prepared.value;
    expect([placeOf(bytes, 'Exif'), placeOf(bytes, 'Saltwood')]).toEqual([-1, -1]);
    expect(await sharp(bytes).metadata()).toMatchObject({ format: 'jpeg', width: 96 });
    const { data } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
    const [red, green] = data;
    expect(red).toBeGreaterThan(150);
    expect(green).toBeLessThan(60);
  });

  test('two at once both come through', async () => {
    const both = await Promise.all([preparePicture(photo), preparePicture(photo)]);
    expect(both.map((prepared) => prepared.ok)).toEqual([true, true]);
  });

  test('says its size before it is unfolded', () => {
    expect(heicSize(photo)).toEqual({ widthPx: 96, heightPx: 64 });
    expect(heicSize(photo.subarray(0, 20))).toBeNull();
    expect(heicSize(new Uint8Array())).toBeNull();
  });

  test('that says it is huge is refused before it is unfolded', async () => {
    const begun = performance.now();
    expect(await preparePicture(saying(9_000, 9_000))).toEqual({
      ok: false,
      refusal: {
        ...{ code: 'picture_too_large', widthPx: 9_000, heightPx: 9_000 },
        pixelsMost: 50_000_000,
      },
    });
    expect(performance.now() - begun).toBeLessThan(200);
  });

  test.each([0.98, 0.7, 0.4, 0.1])(
    'cut off at %d of its length is told as damaged',
    async (part) => {
      const cut = photo.subarray(0, Math.floor(photo.byteLength * part));
      expect(await preparePicture(cut)).toEqual(refused('picture_damaged'));
    },
  );

  test('with noise in place of its pixels never brings anybody down', async () => {
    const noisy = Uint8Array.from(photo);
    for (let at = 500; at < noisy.byteLength; at += 3) noisy[at] = (at * 97) % 256;
    const prepared = await preparePicture(noisy);
    if (!prepared.ok) expect(prepared.refusal.code).toBe('picture_damaged');
    expect((await preparePicture(photo)).ok).toBe(true);
  });

  test('that takes longer than it may is stopped, and the next one goes through', async () => {
    const hurried = { mostMs: 1, memoryBytesMost };
    expect(await unfoldHeic(photo, hurried)).toEqual(refused('picture_takes_too_long'));
    expect((await unfoldHeic(photo)).ok).toBe(true);
  });

  test('that takes more memory than it may is refused', async () => {
    // Only what was answered is compared: its pixels are 24 MB.
    const answered = async (most: number) => {
      const unfolded = await unfoldHeic(large, { mostMs: 20_000, memoryBytesMost: most });
      return unfolded.ok ? unfolded.value.widthPx : unfolded.refusal.code;
    };
    expect(await answered(memoryBytesMost)).toBe(3_000);
    expect(await answered(20 * 1024 * 1024)).toBe('picture_damaged');
  });
});
