import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { findInvoice } from '@/lib/commissions/reads/money/invoice';
import { invoicePdf } from '@/lib/documents/commissions/invoice';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readSheet } from '../../../read-sheet';

type Params = Readonly<{ params: Promise<{ number: string; invoice: string }> }>;

/** What was asked for as a PDF, by the number on its paper. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const { invoice } = await params;
  if (!/^[1-9]\d{0,8}$/.test(invoice)) notFound();
  const which = { number: Number(invoice), today: sheet.telling.today };
  const told = await findInvoice(actor, sheet.id, which);
  if (!told) notFound();
  return pdfAnswer(await invoicePdf(told, sheet.gallery), `invoice-${invoice}`);
}
