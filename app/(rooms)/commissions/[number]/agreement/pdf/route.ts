import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { agreementForCollector } from '@/lib/commissions/reads/agreement/agreements';
import { findAgreementPaper } from '@/lib/commissions/reads/agreement/paper-for';
import { agreementPdf } from '@/lib/documents/commissions/agreement';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { readSheet, type SheetParams } from '../../read-sheet';

/** The agreement as a PDF: as it was signed, or as it is to be signed now. */
export async function GET(
  _request: Request,
  { params }: Readonly<{ params: SheetParams }>,
): Promise<Response> {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const signed = await agreementForCollector(sheet.id);
  const paper = signed ?? (await findAgreementPaper(actor, sheet.id, sheet.telling.today));
  if (!paper) notFound();
  const { body, contentSha256 } = paper;
  const fileId = signed?.signature?.fileId ?? null;
  const bytes = await agreementPdf(
    {
      ...{ body, contentSha256, work: sheet.title, collector: sheet.collector.name },
      ...{ commissionNumber: sheet.number, on: signed?.agreedOn ?? sheet.telling.today },
      signature: signed?.signature ?? null,
      drawing: fileId === null ? null : await readPaperPicture(fileId),
    },
    sheet.gallery,
  );
  return pdfAnswer(bytes, `agreement-${sheet.number}`);
}
