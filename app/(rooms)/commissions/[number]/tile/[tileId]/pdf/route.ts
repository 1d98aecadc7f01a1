import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { listShownWhole } from '@/lib/commissions/reads/colours/studio';
import { tileCardPdf } from '@/lib/documents/commissions/tile-card';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { readSheet } from '../../../read-sheet';

type Params = Readonly<{ params: Promise<{ number: string; tileId: string }> }>;

/** The card of a colour tile as a PDF, for both sets of the pair. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const { tileId } = await params;
  const tile = (await listShownWhole(actor, sheet.id)).find((each) => each.id === tileId);
  if (tile?.what !== 'colour_tile') notFound();
  const picture = await readPaperPicture(tile.fileId);
  const about = { work: sheet.title, collector: sheet.collector.name };
  const told = { ...about, commissionNumber: sheet.number, tile, picture };
  return pdfAnswer(await tileCardPdf(told, sheet.gallery), `tile-${sheet.number}-${tile.label}`);
}
