/** The kinds of picture that are kept. */
export type PictureType = 'image/jpeg' | 'image/webp';

/** The heaviest picture that is taken in, in bytes (25 MB). */
export const pictureBytesMost = 25_000_000;
/** The most pixels that a picture may unfold to: enough for a phone's 48 million. */
export const picturePixelsMost = 80_000_000;
/** The most pixels of a HEIC picture, which is unfolded without help of the machine: 48 million and a little. */
export const heicPixelsMost = 50_000_000;
/** The longest side at which a picture is kept, in pixels. */
export const pictureSideMost = 2400;

/** Why a picture was not taken in. */
export type PictureRefusal =
  | { code: 'picture_empty' }
  | { code: 'picture_too_heavy'; bytes: number; bytesMost: number }
  | { code: 'not_a_picture' }
  | { code: 'picture_kind_unknown'; kind: UnkeptKind }
  | { code: 'picture_too_large'; widthPx: number; heightPx: number; pixelsMost: number }
  | { code: 'picture_damaged' }
  | { code: 'picture_takes_too_long' };

/** Pictures that are known by their first bytes, and not kept. */
export type UnkeptKind = 'avif' | 'gif' | 'tiff' | 'svg';

/** Says in a full sentence why a picture was not taken in, and what helps. */
export function pictureRefusalMessage(refusal: PictureRefusal): string {
  switch (refusal.code) {
    case 'picture_empty':
      return 'There is nothing in this file. Choose the picture again.';
    case 'picture_too_heavy':
      return `This picture has ${megabytes(refusal.bytes)} MB; at most ${megabytes(refusal.bytesMost)} MB can be kept.`;
    case 'not_a_picture':
      return 'This file is not a picture. Choose a JPEG, PNG, WebP or HEIC picture.';
    case 'picture_kind_unknown':
      return `This is a ${kindNames[refusal.kind]} file. Choose a JPEG, PNG, WebP or HEIC picture.`;
    case 'picture_too_large':
      return `This picture is ${refusal.widthPx} by ${refusal.heightPx} pixels, more than can be looked at here. Save it smaller and bring it in again.`;
    case 'picture_damaged':
      return 'This picture cannot be opened; the file may be damaged. Take or save it again.';
    case 'picture_takes_too_long':
      return 'This picture takes too long to open here. Share it from the phone as JPEG and bring it in again.';
  }
}

const kindNames = { avif: 'AVIF', gif: 'GIF', tiff: 'TIFF', svg: 'SVG' } as const;

function megabytes(bytes: number): number {
  return Math.ceil(bytes / 1_000_000);
}

/** What the first bytes of a file say that it is, whatever it is called. */
export type Signature = 'jpeg' | 'png' | 'webp' | 'heic' | UnkeptKind | null;

/**
 * Reads the kind of a picture from its first bytes; its name and what the browser claims count
 * for nothing.
 *
 * @returns null when the bytes begin like no picture
 * @source each format's own published signature (JPEG ITU-T T.81, PNG and WebP specifications; the
 *   brands of HEIC and AVIF: ISO/IEC 23008-12 and the AV1 image file format, from memory)
 * @example signatureOf(new TextEncoder().encode('hello')) // null
 */
export function signatureOf(bytes: Uint8Array): Signature {
  const begins = (...wanted: number[]) => wanted.every((byte, at) => bytes[at] === byte);
  const head = String.fromCharCode(...bytes.subarray(0, 256));
  if (begins(0xff, 0xd8, 0xff)) return 'jpeg';
  if (begins(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png';
  if (head.startsWith('RIFF') && head.slice(8, 12) === 'WEBP') return 'webp';
  if (/^....ftyp/s.test(head)) return boxedKind(head);
  if (head.startsWith('GIF8')) return 'gif';
  if (begins(0x49, 0x49, 0x2a, 0x00) || begins(0x4d, 0x4d, 0x00, 0x2a)) return 'tiff';
  return /^\s*<(\?xml|svg)/.test(head) ? 'svg' : null;
}

/** A file made of boxes says by its brands what lies in it. */
function boxedKind(head: string): Signature {
  const brands = head.slice(8, 64);
  if (/avif|avis/.test(brands)) return 'avif';
  return /^(heic|heix|hevc|hevx|heim|heis|mif1|msf1)/.test(brands) ? 'heic' : null;
}
