import { requireActor } from '@/lib/access/reads';
import { agreementForCollector } from '@/lib/commissions/reads/agreement/agreements';
import { cancelNoticePdf } from '@/lib/documents/commissions/cancel-notice';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readSheet, type SheetParams } from '../../read-sheet';

/** The two papers of the right to cancel, for an agreement that is signed at the collector's home. */
export async function GET(
  _request: Request,
  { params }: Readonly<{ params: SheetParams }>,
): Promise<Response> {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const signed = await agreementForCollector(sheet.id);
  const bytes = await cancelNoticePdf(
    {
      ...{ work: sheet.title, collector: sheet.collector.name, commissionNumber: sheet.number },
      on: signed?.agreedOn ?? sheet.telling.today,
    },
    sheet.gallery,
  );
  return pdfAnswer(bytes, `right-to-cancel-${sheet.number}`);
}
