import 'server-only';
import { createHash } from 'node:crypto';
import { preparePicture, type NewFile, type PreparedPicture } from '@/lib/files/writes';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { SendingRefusal } from '@/lib/sending/rules/refusals';

/** A picture made ready outside the transaction, with the hash that stands for it in a command. */
export type ReadyPicture = PreparedPicture & { sha256: string };

/**
 * Makes pictures ready to be kept, before any transaction is opened.
 *
 * @returns in the order given; refuses, in this order: more than `most`, the first that cannot be kept
 */
export async function readyPictures(
  chosen: readonly Blob[],
  most = 1,
): Promise<Result<ReadyPicture[], SendingRefusal>> {
  if (chosen.length > most) return refuse({ code: 'too_many_pictures', most });
  const ready: ReadyPicture[] = [];
  for (const picture of chosen) {
    const prepared = await preparePicture(new Uint8Array(await picture.arrayBuffer()));
    if (!prepared.ok) return refuse({ code: 'picture_not_kept', picture: prepared.refusal });
    const sha256 = createHash('sha256').update(prepared.value.bytes).digest('hex');
    ready.push({ ...prepared.value, sha256 });
  }
  return ok(ready);
}

/** A ready picture as a file to keep. */
export function fileToKeep(picture: ReadyPicture, at: Date): NewFile {
  const { bytes, mediaType, widthPx, heightPx } = picture;
  return { bytes, mediaType, widthPx, heightPx, at };
}
