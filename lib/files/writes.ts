import 'server-only';
import { createHash } from 'node:crypto';
import sharp, { type Sharp } from 'sharp';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import {
  pictureBytesMost,
  picturePixelsMost,
  pictureSideMost,
  signatureOf,
  type PictureRefusal,
  type PictureType,
} from './rules';
import { unfoldHeic } from './unfold-heic';

/** A picture or paper as it came in; sizes of pictures in pixels. */
export type NewFile = {
  bytes: Uint8Array;
  mediaType: string;
  widthPx?: number;
  heightPx?: number;
  at: Date;
};

/** A kept file, and the lower-case hexadecimal SHA-256 of its bytes. */
export type KeptFile = { id: string; sha256: string };

/**
 * Keeps a file in the database; joins the caller's transaction. The same bytes are kept once: the
 * second time the first file is answered.
 */
export async function keepFile(tx: Tx, file: NewFile): Promise<KeptFile> {
  const sha256 = createHash('sha256').update(file.bytes).digest('hex');
  const select = { id: true, sha256: true };
  const kept = await tx.storedFile.findUnique({ where: { sha256 }, select });
  if (kept) return kept;
  return tx.storedFile.create({
    data: {
      sha256,
      mediaType: file.mediaType,
      byteLength: file.bytes.byteLength,
      bytes: Uint8Array.from(file.bytes),
      widthPx: file.widthPx ?? null,
      heightPx: file.heightPx ?? null,
      createdAt: file.at,
    },
    select,
  });
}

/** A picture made ready to be kept: the right way up, bare of what the camera wrote into it. */
export type PreparedPicture = {
  bytes: Uint8Array;
  mediaType: PictureType;
  widthPx: number;
  heightPx: number;
};

const decodingMostS = 20;

/**
 * Makes a picture ready to be kept: turned the right way up, at most 2400 px on its longer side,
 * and without anything the camera wrote into it, such as where it was taken.
 *
 * It is drawn anew from its pixels, so that whatever else the file carries stays behind. JPEG and
 * HEIC become JPEG; PNG and WebP become WebP, so that what is clear stays clear.
 *
 * @returns refuses, in this order: empty, too heavy, not a picture, a kind that is not kept, more
 *   pixels than are unfolded, damaged, takes too long
 * @example a text file called wall.jpg // refused: not_a_picture
 */
export async function preparePicture(
  bytes: Uint8Array,
): Promise<Result<PreparedPicture, PictureRefusal>> {
  const kind = kindOf(bytes);
  if (!kind.ok) return kind;
  return kind.value === 'heic' ? prepareHeic(bytes) : prepareOther(bytes, kind.value);
}

type KeptKind = 'jpeg' | 'png' | 'webp' | 'heic';

function kindOf(bytes: Uint8Array): Result<KeptKind, PictureRefusal> {
  if (bytes.byteLength === 0) return refuse({ code: 'picture_empty' });
  if (bytes.byteLength > pictureBytesMost) {
    const bytesMost = pictureBytesMost;
    return refuse({ code: 'picture_too_heavy', bytes: bytes.byteLength, bytesMost });
  }
  const kind = signatureOf(bytes);
  if (!kind) return refuse({ code: 'not_a_picture' });
  if (kind === 'jpeg' || kind === 'png' || kind === 'webp' || kind === 'heic') return ok(kind);
  return refuse({ code: 'picture_kind_unknown', kind });
}

async function prepareHeic(bytes: Uint8Array): Promise<Result<PreparedPicture, PictureRefusal>> {
  const unfolded = await unfoldHeic(bytes);
  if (!unfolded.ok) return unfolded;
  const { pixels, widthPx: width, heightPx: height } = unfolded.value;
  const picture = sharp(pixels, { raw: { width, height, channels: 4 } });
  const drawn = await draw(picture.flatten({ background: '#ffffff' }), 'image/jpeg');
  return drawn ? ok(drawn) : refuse({ code: 'picture_damaged' });
}

async function prepareOther(
  bytes: Uint8Array,
  kind: Exclude<KeptKind, 'heic'>,
): Promise<Result<PreparedPicture, PictureRefusal>> {
  const size = await sizeOf(bytes);
  if (!size) return refuse({ code: 'picture_damaged' });
  const { width: widthPx, height: heightPx } = size;
  if (widthPx * heightPx > picturePixelsMost) {
    return refuse({ code: 'picture_too_large', widthPx, heightPx, pixelsMost: picturePixelsMost });
  }
  const picture = sharp(bytes, { limitInputPixels: picturePixelsMost, failOn: 'error' });
  const drawn = await draw(picture.autoOrient(), kind === 'jpeg' ? 'image/jpeg' : 'image/webp');
  return drawn ? ok(drawn) : refuse({ code: 'picture_damaged' });
}

/** Reads the head alone; nothing is unfolded yet. */
async function sizeOf(bytes: Uint8Array) {
  return sharp(bytes, { limitInputPixels: false })
    .metadata()
    .catch(() => null);
}

async function draw(picture: Sharp, mediaType: PictureType): Promise<PreparedPicture | null> {
  const side = pictureSideMost;
  const sized = picture
    .timeout({ seconds: decodingMostS })
    .resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true });
  const encoded =
    mediaType === 'image/jpeg'
      ? sized.jpeg({ quality: 86, mozjpeg: true })
      : sized.webp({ quality: 90 });
  const drawn = await encoded.toBuffer({ resolveWithObject: true }).catch(() => null);
  if (!drawn) return null;
  const { width: widthPx, height: heightPx } = drawn.info;
  return { bytes: Uint8Array.from(drawn.data), mediaType, widthPx, heightPx };
}
