import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';

/** A kept file with its bytes. */
export type FileWithBytes = { sha256: string; mediaType: string; bytes: Uint8Array };

/**
 * A kept file with its bytes, for whoever may look at pictures.
 *
 * @param id a uuid
 * @returns null when nothing is kept under this id
 */
export async function findFile(actor: Actor, id: string): Promise<FileWithBytes | null> {
  assertAllowed(actor, 'files.see');
  return db().storedFile.findUnique({
    where: { id },
    select: { sha256: true, mediaType: true, bytes: true },
  });
}
