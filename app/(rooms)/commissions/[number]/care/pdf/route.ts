import { requireActor } from '@/lib/access/reads';
import { readGoesWith } from '@/lib/commissions/reads/goes-with';
import { careSheetPdf } from '@/lib/documents/goes-with/care-sheet';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { readSheet, type SheetParams } from '../../read-sheet';

/** How to look after a commissioned piece, as a PDF. */
export async function GET(
  _request: Request,
  { params }: Readonly<{ params: SheetParams }>,
): Promise<Response> {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const { number, title, request, gallery } = sheet;
  const { weightG, isSetInWall } = await readGoesWith(actor, sheet);
  const { exposure } = request;
  const about = {
    kind: 'wall_panel',
    foodUse: 'not_proven',
    exposure,
    isSetInWall,
    weightG,
  } as const;
  const what = `made for ${sheet.collector.name}`;
  const told = { title, what, known: `commission ${number}`, about };
  return pdfAnswer(await careSheetPdf(told, gallery), `care-${number}`);
}
