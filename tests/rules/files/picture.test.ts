import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { pictureBytesMost } from '@/lib/files/rules';
import { preparePicture } from '@/lib/files/writes';

const text = (words: string) => new TextEncoder().encode(words);
const code = (refused: string) => ({ ok: false, refusal: { code: refused } });

function canvas(width: number, height: number) {
  return sharp({ create: { width, height, channels: 3, background: '#667755' } });
}

/** A white PNG of one bit a pixel, written by hand after the PNG specification. */
function aWhitePng(side: number): Uint8Array {
  const part = (name: string, body: Uint8Array) => {
    const named = Buffer.concat([text(name), body]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(body.byteLength);
    sum.writeUInt32BE(crc32(named));
    return Buffer.concat([length, named, sum]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(side, 0);
  head.writeUInt32BE(side, 4);
  head.writeUInt8(1, 8);
  const rows = Buffer.alloc((Math.ceil(side / 8) + 1) * side);
  const signature = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
  const body = deflateSync(rows, { level: 1 });
  const parts = [part('IHDR', head), part('IDAT', body), part('IEND', new Uint8Array())];
  return Buffer.concat([signature, ...parts]);
}

test('a photograph is turned the right way up and says no more where it was taken', async () => {
  const photo = await canvas(60, 40)
    .jpeg()
    .withMetadata({ orientation: 6 })
    .withExifMerge({
      IFD0: { Make: 'Saltwood' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '48/1 30/1 0/1' },
    })
    .toBuffer();
  // 48/1 30/1 0/1 as the camera writes it: pairs of numbers of four bytes, least first.
  const place = Buffer.from('30000000010000001e00000001000000', 'hex');
  expect(photo.includes(place)).toBe(true);
  const taken = await sharp(photo).metadata();
  expect([taken.orientation, taken.exif?.includes('Saltwood')]).toEqual([6, true]);
  const prepared = await preparePicture(photo);
  expect(prepared).toMatchObject({
    ok: true,
    value: { mediaType: 'image/jpeg', widthPx: 40, heightPx: 60 },
  });
  const left = prepared.ok ? await sharp(prepared.value.bytes).metadata() : null;
  expect(left).toMatchObject({ width: 40, height: 60, format: 'jpeg' });
  expect(left?.exif).toBeUndefined();
  const kept = prepared.ok ? Buffer.from(prepared.value.bytes) : photo;
  expect([kept.includes(place), kept.includes('Saltwood'), kept.includes('Exif')]).toEqual([
    false,
    false,
    false,
  ]);
  expect(left?.orientation).toBeUndefined();
});

test('a large picture is kept at 2400 pixels on its longer side, a small one as it is', async () => {
  const large = await preparePicture(await canvas(5000, 2500).jpeg().toBuffer());
  expect(large).toMatchObject({ value: { widthPx: 2400, heightPx: 1200 } });
  const small = await preparePicture(await canvas(30, 20).jpeg().toBuffer());
  expect(small).toMatchObject({ value: { widthPx: 30, heightPx: 20 } });
});

test('what is clear in a PNG stays clear', async () => {
  const clear = { r: 0, g: 0, b: 0, alpha: 0 };
  const png = await sharp({ create: { width: 8, height: 8, channels: 4, background: clear } })
    .png()
    .toBuffer();
  const prepared = await preparePicture(png);
  expect(prepared).toMatchObject({ ok: true, value: { mediaType: 'image/webp' } });
  const left = prepared.ok ? await sharp(prepared.value.bytes).metadata() : null;
  expect(left?.hasAlpha).toBe(true);
});

test('a text file called wall.jpg is no picture', async () => {
  expect(await preparePicture(text('This is a wall.'))).toEqual(code('not_a_picture'));
});

test('a drawing that could carry a script is not opened', async () => {
  const svg = text('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>');
  expect(await preparePicture(svg)).toMatchObject(code('picture_kind_unknown'));
});

test('a drawing named as a picture, with anything before it, is not opened', async () => {
  for (const words of ['<?xml version="1.0"?><svg/>', '\uFEFF<svg/>', '<!-- x --><svg/>']) {
    expect(await preparePicture(text(words)), words).toMatchObject({ ok: false });
  }
});

test('of a picture that is a page too, nothing but its pixels is kept', async () => {
  const page = '<html><script>alert("kelp")</script></html>';
  const whole = await canvas(40, 30)
    .jpeg()
    .withExifMerge({ IFD0: { ImageDescription: page } })
    .toBuffer();
  const both = Buffer.concat([whole, text(page)]);
  expect(both.includes('<script>')).toBe(true);
  const prepared = await preparePicture(both);
  expect(prepared).toMatchObject({ ok: true, value: { widthPx: 40, heightPx: 30 } });
  const kept = prepared.ok ? Buffer.from(prepared.value.bytes) : Buffer.alloc(0);
  expect(['<script>', '<html>', 'kelp'].filter((words) => kept.includes(words))).toEqual([]);
});

test('words hidden in a PNG stay behind', async () => {
  const png = await canvas(40, 30).png().toBuffer();
  const said = 'Comment\0<script>alert("kelp")</script>';
  const end = png.byteLength - 12;
  const hidden = Buffer.concat([png.subarray(0, end), text(said), png.subarray(end)]);
  const prepared = await preparePicture(hidden);
  if (prepared.ok) expect(Buffer.from(prepared.value.bytes).includes('kelp')).toBe(false);
});

test('nothing at all, and more than 25 MB, are told as what they are', async () => {
  expect(await preparePicture(new Uint8Array())).toEqual(code('picture_empty'));
  const heavy = new Uint8Array(pictureBytesMost + 1);
  expect(await preparePicture(heavy)).toMatchObject(code('picture_too_heavy'));
});

test('a small file that would unfold to a huge picture is refused before it unfolds', async () => {
  const bomb = aWhitePng(20_000);
  expect(bomb.byteLength).toBeLessThan(1_000_000);
  const begun = performance.now();
  expect(await preparePicture(bomb)).toEqual({
    ok: false,
    refusal: {
      ...{ code: 'picture_too_large', widthPx: 20_000, heightPx: 20_000 },
      pixelsMost: 80_000_000,
    },
  });
  expect(performance.now() - begun).toBeLessThan(2_000);
});

test('a picture that breaks off in the middle is told as damaged', async () => {
  const whole = await canvas(400, 300).jpeg().toBuffer();
  const half = whole.subarray(0, Math.floor(whole.byteLength / 2));
  expect(await preparePicture(half)).toEqual(code('picture_damaged'));
  expect(await preparePicture(whole.subarray(0, 8))).toEqual(code('picture_damaged'));
});

test('the largest picture that is taken does unfold', async () => {
  expect(await preparePicture(aWhitePng(8_000))).toMatchObject({
    ok: true,
    value: { mediaType: 'image/webp', widthPx: 2400, heightPx: 2400 },
  });
});
