import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { holdSlipPdf } from '@/lib/documents/hold-slip';
import { findHold } from '@/lib/holds/reads/hold-list';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { readNumber } from '../read-number';

type Params = Readonly<{ params: Promise<{ number: string }> }>;

/** The slip of a hold as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('stock.hold');
  const number = readNumber((await params).number);
  const hold = number === null ? null : await findHold(actor, number, now());
  if (!hold) notFound();
  const bytes = await holdSlipPdf(hold, await getGallery());
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="hold-${hold.number}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
