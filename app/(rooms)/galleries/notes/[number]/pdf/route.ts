import { notFound } from 'next/navigation';
import { numberIn } from '@/app/(rooms)/stock/places/number-in';
import { requireActor } from '@/lib/access/reads';
import { findNote } from '@/lib/consignment/reads/papers';
import { consignmentNotePdf } from '@/lib/documents/consignment-note';
import { getGallery } from '@/lib/platform/settings';

type Params = Readonly<{ params: Promise<{ number: string }> }>;

/** A consignment note as a PDF, to be signed by both. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('outside.keep');
  const number = numberIn((await params).number);
  const note = number === null ? null : await findNote(actor, number);
  if (!note) notFound();
  return new Response(await consignmentNotePdf(note, await getGallery()), {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="consignment-note-${note.number}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
