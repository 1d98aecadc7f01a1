import { readShipmentOf, type ShipmentAddress } from '@/app/(rooms)/sending/read-shipment';
import { requireActor } from '@/lib/access/reads';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { packingListPdf } from '@/lib/documents/sending/packing-list';
import { getGallery } from '@/lib/platform/settings';

/** The packing list as a PDF. */
export async function GET(_request: Request, { params }: ShipmentAddress): Promise<Response> {
  const actor = await requireActor('sending.do');
  const shipment = await readShipmentOf(actor, params);
  const bytes = await packingListPdf(shipment, await getGallery());
  return pdfAnswer(bytes, `packing-list-${shipment.number}`);
}
