import { requireActor } from '@/lib/access/reads';
import { listShownWhole } from '@/lib/commissions/reads/colours/studio';
import { colourSheetPdf } from '@/lib/documents/commissions/colour-sheet';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { readSheet, type SheetParams } from '../../read-sheet';

/** The colour sheet as a PDF. */
export async function GET(
  _request: Request,
  { params }: Readonly<{ params: SheetParams }>,
): Promise<Response> {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const shown = await listShownWhole(actor, sheet.id);
  const pictures = new Map<string, Uint8Array>();
  for (const { fileId } of shown) {
    const bytes = await readPaperPicture(fileId);
    if (bytes) pictures.set(fileId, bytes);
  }
  const told = { work: sheet.title, collector: sheet.collector.name };
  const about = { ...told, commissionNumber: sheet.number, on: sheet.telling.today };
  const bytes = await colourSheetPdf({ ...about, shown, pictures }, sheet.gallery);
  return pdfAnswer(bytes, `colours-${sheet.number}`);
}
