import 'server-only';
import { formatInstant } from '@/lib/dates/rules';
import type { HoldTold } from '@/lib/holds/reads/hold-list';
import type { Gallery } from '@/lib/platform/settings';
import { ash, iron, makePaper, ruleLine, wordsAndFigure } from './paper';

/**
 * The slip of a hold as a PDF: the piece, for whom, until which day and hour, who promised it,
 * that no money was taken, and who is second in line.
 */
export async function holdSlipPdf(
  hold: HoldTold,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { number, title, code, quantity, editionNumber, untilAt, nextInLine } = hold;
  return makePaper(`Hold ${number}`, gallery, (paper) => {
    paper.font('serif').fontSize(14).text(`Hold ${number}`);
    ruleLine(paper);
    paper.font('italic').fontSize(16).text(title);
    paper.font('sans').fontSize(9.5).fillColor(ash);
    const pieces = editionNumber === null ? `${quantity} of it` : `number ${editionNumber}`;
    paper.text(`${code} · ${pieces} · ${hold.place}`).fillColor(iron).moveDown(1);
    paper.font('bold').fontSize(13).text(`For ${hold.forWhom}`);
    paper.font('sans').fontSize(10);
    if (hold.phone !== '') paper.text(hold.phone);
    paper.moveDown(1);
    const until = untilAt ? formatInstant(untilAt, gallery.timeZone) : 'until its paper ends';
    wordsAndFigure(paper, 'Until', until);
    wordsAndFigure(paper, 'Promised by', hold.staffName);
    wordsAndFigure(paper, 'Since', formatInstant(hold.at, gallery.timeZone));
    wordsAndFigure(paper, 'Second in line', nextInLine ?? 'nobody');
    if (hold.note !== '') paper.moveDown(0.5).text(hold.note);
    paper.moveDown(1.2).fontSize(8.5).fillColor(ash);
    paper.text('No money was taken for this hold. We call before it is let go.').fillColor(iron);
  });
}
