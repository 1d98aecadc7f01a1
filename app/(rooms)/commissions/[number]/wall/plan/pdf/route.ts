import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { wallWords } from '@/lib/commissions/rules/words';
import { planPdf } from '@/lib/documents/installation/plan';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { findPlan, findWeight } from '@/lib/installation/reads/plan/told';
import { plannedWeightWords } from '@/lib/installation/rules/plan/weight-words';
import { readSheet, type SheetParams } from '../../../read-sheet';

type Context = { params: SheetParams };

/** The installer’s sheet of a commission as a PDF. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const actor = await requireActor('commissions.see');
  const { id, number, title, collector, gallery, telling } = await readSheet(actor, params);
  const { lengthUnit } = gallery;
  const [shown, weight] = await Promise.all([
    findPlan(actor, id, lengthUnit),
    findWeight(actor, id),
  ]);
  if (!shown?.plan) notFound();
  const { plan, survey, asked } = shown;
  const proved = survey.provedHow === '' ? 'not said how that was proved' : survey.provedHow;
  const bytes = await planPdf(
    {
      ...{ work: title, collector: collector.name, commissionNumber: number, on: telling.today },
      ...{ plan, cleat: asked.hanging.cleat, told: shown, wall: survey, isOld: shown.isOld },
      wallWords: `${survey.wall ? wallWords[survey.wall] : 'not known'} (${proved})`,
      weightWords: plannedWeightWords(asked.piece.weightG, weight, lengthUnit),
    },
    gallery,
  );
  return pdfAnswer(bytes, `how-it-hangs-${number}`);
}
