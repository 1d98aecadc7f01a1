import { expect, test } from 'vitest';
import { pictureRefusalMessage, signatureOf, type PictureRefusal } from '@/lib/files/rules';

const bytes = (...values: (number | string)[]) =>
  Uint8Array.from(
    values.flatMap((value) =>
      typeof value === 'number' ? [value] : [...new TextEncoder().encode(value)],
    ),
  );

// First bytes as each format's own specification publishes them.
test.each([
  ['JPEG', bytes(0xff, 0xd8, 0xff, 0xe1, 'Exif'), 'jpeg'],
  ['PNG', bytes(0x89, 'PNG', 0x0d, 0x0a, 0x1a, 0x0a), 'png'],
  ['WebP', bytes('RIFF', 0, 0, 0, 0, 'WEBPVP8 '), 'webp'],
  ['HEIC', bytes(0, 0, 0, 24, 'ftypheic'), 'heic'],
  ['HEIC of an older phone', bytes(0, 0, 0, 24, 'ftypmif1', 0, 0, 0, 0, 'mif1heic'), 'heic'],
  ['AVIF', bytes(0, 0, 0, 28, 'ftypavif', 0, 0, 0, 0, 'avifmif1'), 'avif'],
  ['AVIF under a wider name', bytes(0, 0, 0, 28, 'ftypmif1', 0, 0, 0, 0, 'mif1avif'), 'avif'],
  ['a film', bytes(0, 0, 0, 24, 'ftypisom', 0, 0, 0, 0, 'isomiso2'), null],
  ['GIF', bytes('GIF89a'), 'gif'],
  ['TIFF', bytes(0x49, 0x49, 0x2a, 0x00), 'tiff'],
  ['SVG', bytes('<svg xmlns="http://www.w3.org/2000/svg">'), 'svg'],
  ['a text', bytes('This is a wall.'), null],
  ['a sound file that begins like WebP', bytes('RIFF', 0, 0, 0, 0, 'WAVEfmt '), null],
  ['a page', bytes('<html><script>alert(1)</script></html>'), null],
  ['nothing', bytes(), null],
])('%s is known by its first bytes', (_label, head, kind) => {
  expect(signatureOf(head)).toBe(kind);
});

const refusals: Record<PictureRefusal['code'], PictureRefusal> = {
  picture_empty: { code: 'picture_empty' },
  picture_too_heavy: { code: 'picture_too_heavy', bytes: 31_000_000, bytesMost: 25_000_000 },
  not_a_picture: { code: 'not_a_picture' },
  picture_kind_unknown: { code: 'picture_kind_unknown', kind: 'avif' },
  picture_too_large: {
    ...{ code: 'picture_too_large', widthPx: 30_000, heightPx: 30_000 },
    pixelsMost: 80_000_000,
  },
  picture_damaged: { code: 'picture_damaged' },
  picture_takes_too_long: { code: 'picture_takes_too_long' },
};

test.each(Object.values(refusals))('$code is told in full sentences', (refusal) => {
  expect(pictureRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/);
});

test('how heavy a picture is, is told in whole megabytes', () => {
  expect(pictureRefusalMessage(refusals.picture_too_heavy)).toContain('31 MB; at most 25 MB');
});
