import { notFound } from 'next/navigation';
import { readNumber } from '@/app/(rooms)/holds/[number]/read-number';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { layawayStatementPdf } from '@/lib/documents/layaway-statement';
import { findLayaway } from '@/lib/layaway/reads';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

type Params = Readonly<{ params: Promise<{ number: string }> }>;

/** The statement of a layaway as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('stock.hold');
  const gallery = await getGallery();
  const number = readNumber((await params).number);
  const on = dayOf(now(), gallery.timeZone);
  const layaway = number === null ? null : await findLayaway(actor, number, on);
  if (!layaway) notFound();
  const bytes = await layawayStatementPdf(layaway, gallery);
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="layaway-${layaway.number}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
