import 'server-only';
import { dayOf, formatDay } from '@/lib/dates/rules';
import type { ApprovalShown } from '@/lib/holds/reads/approval-slips';
import { formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import { ash, iron, keepTogether, makePaper, ruleLine, wordsAndFigure } from './paper';

/**
 * The slip of pieces that are tried at home, as a PDF to be signed: what, worth how much, out and
 * due back, how it left, what secures it, who bears damage, and a line for each way.
 */
export async function approvalSlipPdf(
  approval: ApprovalShown,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { number, collector, lines, valueCents, dueOn, condition, security, at } = approval;
  return makePaper(`On approval ${number}`, gallery, (paper) => {
    paper.font('serif').fontSize(14).text(`On approval, slip ${number}`);
    paper.font('sans').fontSize(9.5).fillColor(ash);
    paper.text(`Taken home to be tried by ${collector.name}`).fillColor(iron).moveDown(0.4);
    ruleLine(paper);
    for (const line of lines) {
      keepTogether(paper, 36);
      const which = line.editionNumber === null ? '' : `, number ${line.editionNumber}`;
      paper.font('italic').fontSize(12).text(`${line.title}${which}`);
      paper.font('sans').fontSize(8.5).fillColor(ash);
      paper.text(`${line.code} · ${line.quantity} of it`).fillColor(iron).moveDown(0.4);
    }
    paper.moveDown(0.4).font('sans').fontSize(10);
    wordsAndFigure(paper, 'Worth in all', formatCents(valueCents));
    wordsAndFigure(paper, 'Left the gallery', formatDay(dayOf(at, gallery.timeZone), 'long'));
    wordsAndFigure(paper, 'Due back', formatDay(dueOn, 'long'));
    paper.moveDown(0.6).fontSize(9.5);
    paper.text(`How it left: ${condition || 'without a flaw'}`);
    paper.text(`Secured by: ${security || 'nothing'}`).moveDown(0.8);
    paper.fontSize(8.5).fillColor(ash);
    paper.text(
      'The pieces stay the gallery’s own until they are paid for. Whoever takes them home carries ' +
        'them both ways, and bears what happens to them meanwhile up to what they are worth.',
    );
    paper.fillColor(iron);
    for (const words of ['Received, for trying at home', 'Back at the gallery']) {
      keepTogether(paper, 56);
      paper.moveDown(2.6);
      ruleLine(paper);
      paper.text(`${words}: date and signature`);
    }
  });
}
