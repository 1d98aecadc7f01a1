import { requireActor } from '@/lib/access/reads';
import { takeListPdf } from '@/lib/documents/outside/take-list';
import { getGallery } from '@/lib/platform/settings';
import { readFairOfAddress, type FairAddress } from '../read-fair';

/** The take list of a fair as a PDF, with a box to tick for each piece. */
export async function GET(_request: Request, { params }: FairAddress): Promise<Response> {
  const actor = await requireActor('outside.keep');
  const sheet = await readFairOfAddress(actor, params);
  const bytes = await takeListPdf(sheet, await getGallery());
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="take-list-${sheet.fair.number}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
