import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { firingSheetPdf } from '@/lib/documents/studio/firing';
import { getGallery } from '@/lib/platform/settings';
import { firingNumberInput } from '@/lib/studio/input/firings';
import { findFiring } from '@/lib/studio/reads/firings/find';
import { getStudioSettings } from '@/lib/studio/reads/settings';

/** The log sheet of a firing as a PDF. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ number: string }> },
): Promise<Response> {
  const actor = await requireActor('studio.see');
  const number = firingNumberInput.safeParse((await params).number);
  const firing = number.success ? await findFiring(actor, number.data) : null;
  if (!firing) notFound();
  const [gallery, { degrees: scale }] = await Promise.all([getGallery(), getStudioSettings()]);
  return pdfAnswer(await firingSheetPdf(firing, { gallery, scale }), `firing-${firing.number}`);
}
