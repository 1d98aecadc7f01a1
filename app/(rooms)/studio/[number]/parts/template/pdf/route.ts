import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { layOutTemplate, templateRefusalMessage } from '@/lib/clay/rules/template';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { templatePdf } from '@/lib/documents/studio/template';
import { getGallery } from '@/lib/platform/settings';
import { jobNumberInput } from '@/lib/studio/input';
import { findPartMap } from '@/lib/studio/reads/parts/map';

type Context = { params: Promise<{ number: string }> };

/** The numbered drawing of a job at wet size, spread over sheets, as a PDF. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await requireActor('studio.see');
  const number = jobNumberInput.safeParse((await params).number);
  const map = number.success ? await findPartMap(actor, number.data) : null;
  if (!map || map.shrinkagePercent === null) notFound();
  const gallery = await getGallery();
  const laid = layOutTemplate({
    ...{ firedWidthUm: map.size.widthUm, firedHeightUm: map.size.heightUm },
    ...{ shrinkagePercent: map.shrinkagePercent, partsAcross: 1, partsDown: 1 },
    paper: gallery.paperSize,
  });
  if (!laid.ok) return sentence(templateRefusalMessage(laid.refusal));
  const told = { title: map.title, gallery: gallery.name, lengthUnit: gallery.lengthUnit };
  const bytes = await templatePdf(laid.value, told, map.shapes);
  return pdfAnswer(bytes, `wet-template-${map.jobNumber}`);
}

/** Why no sheets were drawn; the relief is too large for them. */
function sentence(words: string): Response {
  const headers = { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' };
  return new Response(words, { status: 422, headers });
}
