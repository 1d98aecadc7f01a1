import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { daySheetPdf } from '@/lib/documents/counter/day-sheet';
import { readDaySheet } from '@/lib/drawer/reads/day-sheet';
import { getGallery } from '@/lib/platform/settings';
import { pdfAnswer, readNumber } from '@/app/(rooms)/receipts/receipt-address';

type Params = Readonly<{ params: Promise<{ number: string }> }>;

/** The day's sheet as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('receipts.see');
  const number = readNumber((await params).number);
  const sheet = number === null ? null : await readDaySheet(actor, number);
  if (!sheet) notFound();
  return pdfAnswer(
    await daySheetPdf(sheet, await getGallery()),
    `days-end-${sheet.count.number}.pdf`,
  );
}
