import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { listBodies } from '@/lib/commissions/reads/enquiry/bodies';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { templatePdf } from '@/lib/documents/studio/template';
import { getGallery } from '@/lib/platform/settings';
import { readTemplateAddress } from '../template-address';

/** The template of an address as a PDF. */
export async function GET(request: Request): Promise<Response> {
  const actor = await requireActor('studio.see');
  const [gallery, bodies] = await Promise.all([getGallery(), listBodies(actor)]);
  const query = Object.fromEntries(new URL(request.url).searchParams);
  const { template, typed } = readTemplateAddress(query, { ...gallery, bodies });
  if (!template) notFound();
  const bytes = await templatePdf(template, {
    ...{ title: typed.title || 'Template', gallery: gallery.name, lengthUnit: gallery.lengthUnit },
  });
  return pdfAnswer(bytes, 'template');
}
