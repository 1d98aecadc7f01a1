import { readShipmentOf, type ShipmentAddress } from '@/app/(rooms)/sending/read-shipment';
import { requireActor } from '@/lib/access/reads';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { crateLabelsPdf } from '@/lib/documents/sending/labels';
import { getGallery } from '@/lib/platform/settings';

/** The labels of a shipment’s boxes as a PDF. */
export async function GET(_request: Request, { params }: ShipmentAddress): Promise<Response> {
  const actor = await requireActor('sending.do');
  const shipment = await readShipmentOf(actor, params);
  const bytes = await crateLabelsPdf(shipment, await getGallery());
  return pdfAnswer(bytes, `labels-of-shipment-${shipment.number}`);
}
