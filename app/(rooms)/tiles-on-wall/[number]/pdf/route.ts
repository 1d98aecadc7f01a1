import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { tileWallPdf } from '@/lib/documents/installation/tile-wall';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { getGallery } from '@/lib/platform/settings';
import { readWallOf, type WallParams } from '../../read-wall';

/** A wall of tiles as a PDF, for the tile contractor. */
export async function GET(
  _request: Request,
  { params }: Readonly<{ params: WallParams }>,
): Promise<Response> {
  const actor = await requireActor('installation.do');
  const wall = await readWallOf(actor, params);
  if (!wall) notFound();
  return pdfAnswer(await tileWallPdf(wall, await getGallery()), `tiles-on-wall-${wall.number}`);
}
