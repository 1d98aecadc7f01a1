import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { partMapPdf } from '@/lib/documents/studio/part-map';
import { getGallery } from '@/lib/platform/settings';
import { jobNumberInput } from '@/lib/studio/input';
import { findPartMap } from '@/lib/studio/reads/parts/map';

type Context = { params: Promise<{ number: string }> };

/** The numbered drawing of a job as a PDF. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await requireActor('studio.see');
  const number = jobNumberInput.safeParse((await params).number);
  const map = number.success ? await findPartMap(actor, number.data) : null;
  if (!map) notFound();
  const bytes = await partMapPdf(map, await getGallery());
  return pdfAnswer(bytes, `numbered-drawing-${map.jobNumber}`);
}
