import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { changeOrdersForCollector } from '@/lib/commissions/reads/agreement/agreements';
import { changeOrderPdf } from '@/lib/documents/commissions/agreement';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { readSheet } from '../../../read-sheet';

type Params = Readonly<{ params: Promise<{ number: string; order: string }> }>;

/** A change order as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const { order } = await params;
  const changes = await changeOrdersForCollector(sheet.id);
  const change = changes.find((each) => String(each.number) === order);
  if (!change) notFound();
  const { body, contentSha256, number, signed, offeredOn } = change;
  const bytes = await changeOrderPdf(
    {
      ...{ body, contentSha256, number, work: sheet.title, collector: sheet.collector.name },
      ...{ commissionNumber: sheet.number, on: signed?.on ?? offeredOn, signature: signed },
      drawing: signed?.fileId ? await readPaperPicture(signed.fileId) : null,
    },
    sheet.gallery,
  );
  return pdfAnswer(bytes, `change-order-${sheet.number}-${number}`);
}
