import { notFound } from 'next/navigation';
import { z } from 'zod';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { workOrderPdf } from '@/lib/documents/installation/work-order';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { findWorkOrder } from '@/lib/installation/reads/work/order';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';

type Context = Readonly<{ params: Promise<{ id: string }> }>;

/** The work order as a PDF, for whoever wants it on paper. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await requireActor('installation.do');
  const id = z.uuid().safeParse((await params).id);
  const gallery = await getGallery();
  const today = dayOf(now(), gallery.timeZone);
  const order = id.success ? await findWorkOrder(actor, id.data, { gallery, today }) : null;
  if (!order) notFound();
  return pdfAnswer(await workOrderPdf(order, gallery), `work-order-${order.startsOn}`);
}
