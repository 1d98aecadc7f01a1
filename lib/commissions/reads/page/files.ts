import 'server-only';
import { db } from '@/lib/platform/db/client';

/** A picture as the page of a collector serves it. */
export type PictureForCollector = { sha256: string; mediaType: string; bytes: Uint8Array };

/**
 * A picture that the collector's page of this commission shows: a sketch, a colour tile or a shade
 * of it, or what the studio shared of the making.
 *
 * @returns null for every other picture, and for one that is none
 */
export async function pictureForCollector(
  commissionId: string,
  fileId: string,
): Promise<PictureForCollector | null> {
  if (!(await isShownThere(commissionId, fileId))) return null;
  const file = await db().storedFile.findUnique({
    where: { id: fileId },
    select: { sha256: true, mediaType: true, bytes: true },
  });
  return file && /^image\/(jpeg|webp|png)$/.test(file.mediaType) ? file : null;
}

async function isShownThere(commissionId: string, fileId: string): Promise<boolean> {
  const where = { commissionId, fileId };
  const shown = await Promise.all([
    db().sketch.findFirst({ where, select: { id: true } }),
    db().colourTile.findFirst({ where, select: { id: true } }),
    db().colourTileShade.findFirst({
      where: { fileId, tile: { commissionId } },
      select: { tileId: true },
    }),
    db().progress.findFirst({ where: { ...where, shared: true }, select: { id: true } }),
  ]);
  return shown.some((row) => row !== null);
}
