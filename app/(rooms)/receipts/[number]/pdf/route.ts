import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { receiptPdf } from '@/lib/documents/receipt';
import { getGallery } from '@/lib/platform/settings';
import { findReceipt } from '@/lib/sales/reads/receipts';
import { pdfAnswer, readNumber } from '../../receipt-address';

type Params = Readonly<{ params: Promise<{ number: string }> }>;

/** The receipt as a PDF; `?gift=1` leaves the prices out. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('receipts.see');
  const number = readNumber((await params).number);
  const receipt = number === null ? null : await findReceipt(actor, number);
  if (!receipt) notFound();

  const kind = new URL(request.url).searchParams.get('gift') === '1' ? 'gift' : 'whole';
  const bytes = await receiptPdf(receipt, await getGallery(), kind);
  return pdfAnswer(bytes, `${kind === 'gift' ? 'gift-receipt' : 'receipt'}-${receipt.number}.pdf`);
}
