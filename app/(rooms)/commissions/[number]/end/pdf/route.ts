import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { findSettlement } from '@/lib/commissions/reads/money/settlement';
import { settlementPdf } from '@/lib/documents/commissions/settlement';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readSheet, type SheetParams } from '../../read-sheet';

/** The settlement of an early end as a PDF. */
export async function GET(
  _request: Request,
  { params }: Readonly<{ params: SheetParams }>,
): Promise<Response> {
  const actor = await requireActor('commissions.see_money');
  const sheet = await readSheet(actor, params);
  const told = await findSettlement(actor, sheet.id);
  if (!told) notFound();
  return pdfAnswer(await settlementPdf(told, sheet.gallery), `settlement-${sheet.number}`);
}
