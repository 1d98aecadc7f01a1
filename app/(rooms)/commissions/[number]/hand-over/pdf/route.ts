import { requireActor } from '@/lib/access/reads';
import { findHandOverPaper } from '@/lib/commissions/reads/agreement/hand-over-for';
import { handOverPdf } from '@/lib/documents/commissions/hand-over';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { readSheet, type SheetParams } from '../../read-sheet';

/** The hand-over as a PDF: as it was signed, or to be signed at the wall. */
export async function GET(
  _request: Request,
  { params }: Readonly<{ params: SheetParams }>,
): Promise<Response> {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const paper = await findHandOverPaper(actor, sheet.id);
  const fileId = paper.handed?.signature?.fileId ?? null;
  const drawing = fileId === null ? null : await readPaperPicture(fileId);
  const bytes = await handOverPdf({ paper, today: sheet.telling.today, drawing }, sheet.gallery);
  return pdfAnswer(bytes, `hand-over-${sheet.number}`);
}
