import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { findReceipt } from '@/lib/commissions/reads/money/receipt';
import { paymentSlipPdf } from '@/lib/documents/commissions/receipt';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readSheet } from '../../../read-sheet';

type Params = Readonly<{ params: Promise<{ number: string; slip: string }> }>;

/** The slip of one payment as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const { slip } = await params;
  const isNumber = /^[1-9]\d{0,8}$/.test(slip);
  const told = isNumber ? await findReceipt(actor, sheet.id, Number(slip)) : null;
  if (!told) notFound();
  return pdfAnswer(await paymentSlipPdf(told, sheet.gallery), `payment-slip-${slip}`);
}
