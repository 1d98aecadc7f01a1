import 'server-only';
import { createHash } from 'node:crypto';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { PictureRefusal } from './rules';
import { preparePicture, type NewFile, type PreparedPicture } from './writes';

/** A picture made ready outside the transaction, with the hash that stands for it in a command. */
export type ReadyPicture = PreparedPicture & { sha256: string };

/** Why a picture was not made ready. */
export type NotReady = { code: 'picture_not_kept'; picture: PictureRefusal };

/**
 * Makes pictures ready to be kept, before any transaction is opened.
 *
 * @returns in the order given; refuses with the first that cannot be kept
 */
export async function readyPictures(
  chosen: readonly Blob[],
): Promise<Result<ReadyPicture[], NotReady>> {
  const ready: ReadyPicture[] = [];
  for (const picture of chosen) {
    const one = await readyPicture(picture);
    if (!one.ok) return one;
    ready.push(one.value);
  }
  return ok(ready);
}

/** Makes one picture ready; see {@link readyPictures}. */
export async function readyPicture(chosen: Blob): Promise<Result<ReadyPicture, NotReady>> {
  const prepared = await preparePicture(new Uint8Array(await chosen.arrayBuffer()));
  if (!prepared.ok) return refuse({ code: 'picture_not_kept', picture: prepared.refusal });
  const sha256 = createHash('sha256').update(prepared.value.bytes).digest('hex');
  return ok({ ...prepared.value, sha256 });
}

/** A ready picture as a file to keep. */
export function fileToKeep(picture: ReadyPicture, at: Date): NewFile {
  const { bytes, mediaType, widthPx, heightPx } = picture;
  return { bytes, mediaType, widthPx, heightPx, at };
}
