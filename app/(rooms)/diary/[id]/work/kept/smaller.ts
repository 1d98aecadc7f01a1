import { pictureSideMost } from '@/lib/files/rules';
import type { KeptPicture } from './store';

const likeness = 0.86;

/**
 * A picture as it is kept on the device: no larger than the gallery keeps it, so that many of them
 * fit and go through a thin line. What this browser cannot open is kept as it came.
 */
export async function keptPictureOf(file: Blob): Promise<KeptPicture> {
  const made = (await smaller(file).catch(() => null)) ?? file;
  return { bytes: await made.arrayBuffer(), type: made.type };
}

async function smaller(file: Blob): Promise<Blob | null> {
  const picture = await createImageBitmap(file);
  const scale = pictureSideMost / Math.max(picture.width, picture.height);
  if (scale >= 1) return null;
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve) => {
    canvas.toBlob(resolve, 'image/jpeg', likeness);
  });
}
