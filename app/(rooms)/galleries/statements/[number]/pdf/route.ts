import { notFound } from 'next/navigation';
import { numberIn } from '@/app/(rooms)/stock/places/number-in';
import { requireActor } from '@/lib/access/reads';
import { findStatement } from '@/lib/consignment/reads/statements';
import { consignmentStatementPdf } from '@/lib/documents/consignment-statement';
import { getGallery } from '@/lib/platform/settings';

type Params = Readonly<{ params: Promise<{ number: string }> }>;

/** A statement of another gallery as a PDF. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const actor = await requireActor('outside.keep');
  const number = numberIn((await params).number);
  const statement = number === null ? null : await findStatement(actor, number);
  if (!statement) notFound();
  return new Response(await consignmentStatementPdf(statement, await getGallery()), {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="statement-${statement.number}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
