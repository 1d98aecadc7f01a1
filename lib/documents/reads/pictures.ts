import 'server-only';
import sharp from 'sharp';
import { db } from '@/lib/platform/db/client';

const sideMost = 1400;

/**
 * A kept picture as a JPEG that a paper takes, by its id or by the address it is shown at.
 *
 * @returns null when there is no such file, or it is no picture
 */
export async function readPaperPicture(idOrAddress: string): Promise<Uint8Array | null> {
  const id = /[0-9a-f]{8}-[0-9a-f-]{27}/.exec(idOrAddress)?.[0];
  if (id === undefined) return null;
  const file = await db().storedFile.findUnique({
    where: { id },
    select: { bytes: true, mediaType: true },
  });
  if (!file?.mediaType.startsWith('image/')) return null;
  const size = {
    width: sideMost,
    height: sideMost,
    fit: 'inside',
    withoutEnlargement: true,
  } as const;
  return sharp(file.bytes).resize(size).flatten({ background: '#ffffff' }).jpeg().toBuffer();
}
