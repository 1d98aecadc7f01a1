import { pdfAnswer } from '@/app/(rooms)/receipts/receipt-address';
import { requireActor } from '@/lib/access/reads';
import { returnSignPdf } from '@/lib/documents/counter/return-sign';
import { getGallery } from '@/lib/platform/settings';

/** The sign with the terms on which a piece comes back, to be put up at the counter. */
export async function GET(): Promise<Response> {
  await requireActor('receipts.see');
  return pdfAnswer(await returnSignPdf(await getGallery()), 'bringing-a-piece-back.pdf');
}
