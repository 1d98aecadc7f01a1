import 'server-only';
import type { Lab } from '@/lib/colour/rules';

/** A kept picture: its file and its true size in pixels. */
export type KeptPicture = { fileId: string; widthPx: number; heightPx: number };

/** The columns of a picture. */
export const pictureColumns = { select: { id: true, widthPx: true, heightPx: true } } as const;

type File = { id: string; widthPx: number | null; heightPx: number | null } | null;
type Star = { toNumber: () => number } | null;

/** A picture as pages show it; null for none, or for a file that is no picture. */
export function pictureOf(file: File): KeptPicture | null {
  if (!file || file.widthPx === null || file.heightPx === null) return null;
  return { fileId: file.id, widthPx: file.widthPx, heightPx: file.heightPx };
}

/** A measured colour; null where none was measured. */
export function labOf({
  lStar,
  aStar,
  bStar,
}: Record<'lStar' | 'aStar' | 'bStar', Star>): Lab | null {
  if (!lStar || !aStar || !bStar) return null;
  return [lStar.toNumber(), aStar.toNumber(), bStar.toNumber()];
}
