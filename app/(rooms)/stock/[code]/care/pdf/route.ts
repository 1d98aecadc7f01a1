import { notFound } from 'next/navigation';
import { requireActor } from '@/lib/access/reads';
import { findPieceFacts } from '@/lib/catalogue/reads/piece-facts';
import { dayOf } from '@/lib/dates/rules';
import { careSheetPdf } from '@/lib/documents/goes-with/care-sheet';
import { pdfAnswer } from '@/lib/documents/pdf-answer';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findPieceSheet } from '@/lib/stock/reads/stock-room';

type RouteProps = Readonly<{ params: Promise<{ code: string }> }>;

/** How to look after a piece, as a PDF. */
export async function GET(_request: Request, { params }: RouteProps): Promise<Response> {
  const actor = await requireActor('stock.see');
  const { code } = await params;
  const [sheet, gallery] = await Promise.all([findPieceSheet(actor, code), getGallery()]);
  if (!sheet) notFound();
  const { id, title, what, kind, weightG, code: known } = sheet.piece;
  const facts = await findPieceFacts(actor, id, dayOf(now(), gallery.timeZone));
  const foodUse = facts?.foodUse ?? 'not_proven';
  const about = { kind, foodUse, exposure: null, isSetInWall: false, weightG };
  return pdfAnswer(await careSheetPdf({ title, what, known, about }, gallery), `care-${known}`);
}
