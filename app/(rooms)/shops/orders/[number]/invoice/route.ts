import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { shopInvoicePdf } from '@/lib/documents/outside/shop-invoice';
import { getGallery } from '@/lib/platform/settings';
import { readOrderOfAddress, type OrderAddress } from '../read-order';

/** The invoice of a shop's order as a PDF. */
export async function GET(_request: Request, { params }: OrderAddress): Promise<Response> {
  const actor = await requireActor('outside.keep');
  const order = await readOrderOfAddress(actor, params);
  if (!order.invoice) notFound();
  const bytes = await shopInvoicePdf(order, order.invoice, await getGallery());
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="invoice-${order.invoice.number}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
