import 'server-only';
import { formatDay, formatInstant } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import type { ReturnPaper } from '@/lib/returns/reads';
import { ash, iron, keepTogether, makePaper, ruleLine, wordsAndFigure, type Paper } from '../paper';
import { becameWords, refundWords } from '../rules/return-words';

/** The return as a PDF: which receipt it answers, what came back, why, and what was given back. */
export async function returnPdf(
  back: ReturnPaper,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  return makePaper(`Return ${back.number}`, gallery, (paper) => {
    writeTitle(paper, back, gallery.timeZone);
    ruleLine(paper);
    for (const line of back.lines) writeLine(paper, line);
    writeSums(paper, back);
    for (const { code, amountCents } of back.credits) {
      keepTogether(paper, 40);
      paper
        .moveDown(0.8)
        .font('serif')
        .fontSize(13)
        .text(`${formatCents(amountCents)} on ${code}`);
      paper.font('sans').fontSize(8.5).fillColor(ash);
      paper.text('Show this number at the counter; it pays like money.').fillColor(iron);
    }
  });
}

function writeTitle(paper: Paper, back: ReturnPaper, zone: string): void {
  paper.font('serif').fontSize(14).text(`Return ${back.number}`);
  paper.font('sans').fontSize(9.5).fillColor(ash);
  paper.text(`${formatInstant(back.at, zone)} · ${back.by}`);
  paper.text(`Of receipt ${back.receiptNumber}, sold on ${formatDay(back.soldOn, 'short')}`);
  if (back.collector) paper.text(`For ${back.collector.name}`);
  paper.fillColor(iron).text(back.reason).moveDown(0.4);
}

function writeLine(paper: Paper, line: ReturnPaper['lines'][number]): void {
  keepTogether(paper, 44);
  paper.font('italic').fontSize(12);
  wordsAndFigure(paper, line.title, '');
  paper.font('sans').fontSize(9.5);
  wordsAndFigure(paper, becameWords(line), formatCents(line.netCents));
  paper.fontSize(8.5).fillColor(ash).text(line.what).fillColor(iron).moveDown(0.6);
}

function writeSums(paper: Paper, back: ReturnPaper): void {
  keepTogether(paper, 90 + 14 * (back.taxes.length + back.refunds.length));
  paper.moveDown(0.5).font('sans').fontSize(9.5);
  wordsAndFigure(paper, 'Before tax', formatCents(back.netCents));
  for (const tax of back.taxes) {
    wordsAndFigure(paper, `Sales tax, ${tax.authority}`, formatCents(tax.taxCents));
  }
  if (back.feeCents > 0n) wordsAndFigure(paper, 'Kept by us', formatCents(-back.feeCents));
  paper.moveDown(0.3).font('bold').fontSize(13);
  wordsAndFigure(paper, 'Given back', formatCents(back.totalCents));
  paper.moveDown(0.3).font('sans').fontSize(9.5);
  for (const refund of back.refunds) {
    wordsAndFigure(paper, refundWords(refund), formatCents(refund.amountCents));
  }
}
