import { notFound } from 'next/navigation';
import { readShipmentOf, type ShipmentAddress } from '@/app/(rooms)/sending/read-shipment';
import { requireActor } from '@/lib/access/reads';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { conditionReportPdf } from '@/lib/documents/sending/condition-report';
import { getGallery } from '@/lib/platform/settings';

/** A condition report as a PDF, with its pictures and their marks. */
export async function GET(
  _request: Request,
  { params }: ShipmentAddress<{ reportId: string }>,
): Promise<Response> {
  const actor = await requireActor('sending.do');
  const shipment = await readShipmentOf(actor, params);
  const { reportId } = await params;
  const report = shipment.reports.find(({ id }) => id === reportId);
  if (!report) notFound();
  const pictures = await Promise.all(report.views.map(({ fileId }) => readPaperPicture(fileId)));
  const bytes = await conditionReportPdf({ shipment, report, pictures }, await getGallery());
  return pdfAnswer(bytes, `condition-${report.when}-${shipment.number}`);
}
