import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { returnPdf } from '@/lib/documents/counter/return-paper';
import { getGallery } from '@/lib/platform/settings';
import { findReturn } from '@/lib/returns/reads';
import { pdfAnswer, readNumber } from '../../../receipt-address';

type Params = Readonly<{ params: Promise<{ number: string }> }>;

/** The return as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('receipts.see');
  const number = readNumber((await params).number);
  const paper = number === null ? null : await findReturn(actor, number);
  if (!paper) notFound();
  return pdfAnswer(await returnPdf(paper, await getGallery()), `return-${paper.number}.pdf`);
}
