import 'server-only';
import { formatDay } from '@/lib/dates/rules';
import type { LayawayFacts } from '@/lib/layaway/reads/facts';
import { formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import { ash, iron, keepTogether, makePaper, ruleLine, wordsAndFigure, type Paper } from './paper';

/**
 * The written statement of a layaway as a PDF: what, price, tax as reckoned that day, total, paid
 * and remaining, each payment and its day, the last day, the terms of the day, and two signatures.
 */
export async function layawayStatementPdf(
  layaway: LayawayFacts,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { number, collector, agreedOn, finalOn } = layaway;
  return makePaper(`Layaway ${number}`, gallery, (paper) => {
    paper.font('serif').fontSize(14).text(`Layaway ${number}`);
    paper.font('sans').fontSize(9.5).fillColor(ash);
    paper.text(`${formatDay(agreedOn, 'long')} · for ${collector.name}`);
    paper
      .text(`To be paid off by ${formatDay(finalOn, 'long')}`)
      .fillColor(iron)
      .moveDown(0.4);
    ruleLine(paper);
    writePieces(paper, layaway);
    writeSums(paper, layaway);
    writeDues(paper, layaway);
    writeTerms(paper, layaway);
  });
}

function writePieces(paper: Paper, { lines }: LayawayFacts): void {
  for (const line of lines) {
    keepTogether(paper, 44);
    const { title, what, quantity, editionNumber, unitPriceCents, discountCents } = line;
    paper.font('sans').fontSize(10.5);
    const grossCents = unitPriceCents * BigInt(quantity);
    wordsAndFigure(paper, quantity > 1 ? `${quantity} × ${title}` : title, formatCents(grossCents));
    const number = editionNumber === null ? '' : ` · number ${editionNumber}`;
    paper.fontSize(8.5).fillColor(ash).text(`${what}${number}`).fillColor(iron);
    if (discountCents > 0n) {
      wordsAndFigure(paper, `Taken off: ${line.discountReason}`, formatCents(-discountCents));
    }
    paper.moveDown(0.5);
  }
}

function writeSums(paper: Paper, layaway: LayawayFacts): void {
  const { netCents, agreedTotalCents, money } = layaway;
  keepTogether(paper, 110);
  paper.font('sans').fontSize(9.5);
  wordsAndFigure(paper, 'Before tax', formatCents(netCents));
  const taxWords = 'Sales tax, as reckoned that day';
  wordsAndFigure(paper, taxWords, formatCents(agreedTotalCents - netCents));
  paper.moveDown(0.2).font('bold').fontSize(12);
  wordsAndFigure(paper, 'Total', formatCents(agreedTotalCents));
  paper.font('sans').fontSize(9.5);
  if (money.totalCents !== agreedTotalCents) {
    wordsAndFigure(paper, 'Total with the tax of today', formatCents(money.totalCents));
  }
  wordsAndFigure(paper, 'Paid so far', formatCents(money.paidCents));
  wordsAndFigure(paper, 'Still to be paid', formatCents(money.remainingCents));
  paper.moveDown(0.8);
}

function writeDues(paper: Paper, { dues }: LayawayFacts): void {
  keepTogether(paper, 24 + 14 * dues.length);
  paper.font('bold').fontSize(10).text('To be paid').font('sans').fontSize(9.5);
  for (const { dueOn, amountCents } of dues) {
    wordsAndFigure(paper, `by ${formatDay(dueOn, 'short')}`, formatCents(amountCents));
  }
  paper.moveDown(0.8);
}

function writeTerms(paper: Paper, { terms }: LayawayFacts): void {
  keepTogether(paper, 120);
  paper.font('sans').fontSize(8.5).fillColor(ash);
  paper.text('No fee is charged. The pieces are kept back and are handed over when all is paid.');
  if (terms !== '') paper.moveDown(0.4).text(terms);
  paper.text('If the pieces cannot be handed over as described, all money is given back.');
  paper.fillColor(iron).moveDown(2.4);
  ruleLine(paper);
  paper.text('Signed, for the gallery and by the buyer; each keeps a copy.');
}
