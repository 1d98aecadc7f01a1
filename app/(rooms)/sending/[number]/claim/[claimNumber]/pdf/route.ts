import { notFound } from 'next/navigation';
import { readShipmentOf, type ShipmentAddress } from '@/app/(rooms)/sending/read-shipment';
import { requireActor } from '@/lib/access/reads';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { claimCoverPdf } from '@/lib/documents/sending/claim-cover';
import { getGallery } from '@/lib/platform/settings';

/** The cover of a claim’s file as a PDF. */
export async function GET(
  _request: Request,
  { params }: ShipmentAddress<{ claimNumber: string }>,
): Promise<Response> {
  const actor = await requireActor('sending.do');
  const shipment = await readShipmentOf(actor, params);
  const { claimNumber } = await params;
  const claim = shipment.claims.find(({ number }) => String(number) === claimNumber);
  if (!claim) notFound();
  const kept = await Promise.all(claim.pictures.map(({ fileId }) => readPaperPicture(fileId)));
  const pictures = kept.filter((bytes) => bytes !== null);
  const bytes = await claimCoverPdf({ shipment, claim, pictures }, await getGallery());
  return pdfAnswer(bytes, `claim-${claim.number}`);
}
