import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { transferNotePdf } from '@/lib/documents/transfer-note';
import { getGallery } from '@/lib/platform/settings';
import { findMove } from '@/lib/stock/reads/moves/papers';
import { numberIn } from '../../../number-in';

type Params = Readonly<{ params: Promise<{ number: string }> }>;

/** The paper of a move as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('stock.move');
  const number = numberIn((await params).number);
  const move = number === null ? null : await findMove(actor, number);
  if (!move) notFound();
  return new Response(await transferNotePdf(move, await getGallery()), {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="move-${move.number}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
