import 'server-only';
import { readyPictures, type ReadyPicture } from '@/lib/files/ready';
import { refuse, type Result } from '@/lib/platform/result';
import type { SendingRefusal } from '@/lib/sending/rules/refusals';

/**
 * Makes so many pictures ready to be kept, before any transaction is opened.
 *
 * @returns in the order given; refuses, in this order: more than `most`, the first that cannot be kept
 */
export async function readyAtMost(
  chosen: readonly Blob[],
  most: number,
): Promise<Result<ReadyPicture[], SendingRefusal>> {
  if (chosen.length > most) return refuse({ code: 'too_many_pictures', most });
  return readyPictures(chosen);
}
