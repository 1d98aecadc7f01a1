import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { labelsPdf } from '@/lib/documents/labels/sheet';
import { findLabels } from '@/lib/documents/reads/labels';
import { getGallery } from '@/lib/platform/settings';
import { readLabelAddress } from '../label-address';

/** The labels of an address as a PDF. */
export async function GET(request: Request): Promise<Response> {
  const actor = await requireActor('stock.see');
  const { searchParams } = new URL(request.url);
  const query = Object.fromEntries(
    [...new Set(searchParams.keys())].map((name) => [name, searchParams.getAll(name)]),
  );
  const { asked, print } = readLabelAddress(query);
  const found = asked ? await findLabels(actor, asked) : null;
  if (!found || found.pieces.length === 0) notFound();
  const bytes = await labelsPdf(found.pieces, await getGallery(), print);
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': 'inline; filename="labels.pdf"',
      'Cache-Control': 'private, no-store',
    },
  });
}
