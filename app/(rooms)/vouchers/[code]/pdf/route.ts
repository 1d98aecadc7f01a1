import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { voucherPdf } from '@/lib/documents/counter/voucher';
import { getGallery } from '@/lib/platform/settings';
import { findCredit } from '@/lib/vouchers/reads/list';
import { pdfAnswer } from '@/app/(rooms)/receipts/receipt-address';

type Params = Readonly<{ params: Promise<{ code: string }> }>;

/** The voucher as a PDF, to be handed over. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('receipts.see');
  const credit = await findCredit(actor, decodeURIComponent((await params).code));
  if (!credit) notFound();
  return pdfAnswer(await voucherPdf(credit, await getGallery()), `voucher-${credit.code}.pdf`);
}
