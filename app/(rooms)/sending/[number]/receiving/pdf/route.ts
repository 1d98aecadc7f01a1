import { readShipmentOf, type ShipmentAddress } from '@/app/(rooms)/sending/read-shipment';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { receivingSlipPdf } from '@/lib/documents/sending/receiving-slip';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

/** The slip for whoever receives a shipment, as a PDF. */
export async function GET(_request: Request, { params }: ShipmentAddress): Promise<Response> {
  const actor = await requireActor('sending.do');
  const shipment = await readShipmentOf(actor, params);
  const gallery = await getGallery();
  const today = dayOf(now(), gallery.timeZone);
  const bytes = await receivingSlipPdf(shipment, { gallery, today });
  return pdfAnswer(bytes, `when-shipment-${shipment.number}-comes`);
}
