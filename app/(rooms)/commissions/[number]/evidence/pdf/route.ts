import { requireActor } from '@/lib/access/reads';
import { readEvidence } from '@/lib/commissions/reads/evidence/evidence';
import { evidencePdf } from '@/lib/documents/commissions/evidence';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { readSheet, type SheetParams } from '../../read-sheet';

/** The whole evidence as one PDF. */
export async function GET(
  _request: Request,
  { params }: Readonly<{ params: SheetParams }>,
): Promise<Response> {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const chapters = await readEvidence(actor, sheet);
  const pictures = new Map<string, Uint8Array>();
  const files = chapters.flatMap(({ entries }) =>
    entries.flatMap(({ pictures: shown, drawing }) => [
      ...shown.map(({ fileId }) => fileId),
      ...(drawing ? [drawing] : []),
    ]),
  );
  // One after the other: each is decoded whole, and memory is not endless.
  for (const fileId of new Set(files)) {
    const bytes = await readPaperPicture(fileId);
    if (bytes) pictures.set(fileId, bytes);
  }
  const told = { work: sheet.title, collector: sheet.collector.name, chapters, pictures };
  const about = { ...told, commissionNumber: sheet.number, on: sheet.telling.today };
  return pdfAnswer(await evidencePdf(about, sheet.gallery), `evidence-${sheet.number}`);
}
