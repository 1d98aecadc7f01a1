import 'server-only';
import type { StatementLine, StatementPaper } from '@/lib/consignment/reads/statements';
import { bearerWords } from '@/lib/consignment/rules';
import { formatDay } from '@/lib/dates/rules';
import { formatCents, sumCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import { ash, iron, keepTogether, makePaper, ruleLine, wordsAndFigure, type Paper } from './paper';
import { tenderWords } from './rules';
import { pieceLine } from './transfer-note';

/**
 * The statement of what another gallery sold, as a PDF: each piece with its retail price, discount
 * and share, what is due and by when, what was paid.
 */
export async function consignmentStatementPdf(
  statement: StatementPaper,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  return makePaper(`Statement ${statement.number}`, gallery, (paper) => {
    paper.font('serif').fontSize(14).text(`Statement ${statement.number}`);
    paper.font('sans').fontSize(9.5).fillColor(ash).text(`For ${statement.gallery.name}`);
    const { fromOn, untilOn } = statement;
    paper.text(`Sold from ${formatDay(fromOn, 'short')} to ${formatDay(untilOn, 'short')}`);
    paper.fillColor(iron).moveDown(0.4);
    ruleLine(paper);
    for (const line of statement.lines) {
      const figure = formatCents(line.dueCents);
      pieceLine(paper, { title: line.title, what: lineWords(line), figure });
    }
    writeSums(paper, statement);
  });
}

/** How a line's due comes about: `HR-14-MO · sold 3 Mar 2026 · retail $380.00 · …`. */
function lineWords(line: StatementLine): string {
  const number = line.number === null ? '' : `, number ${line.number}`;
  const many = line.quantity > 1 ? `${line.quantity} × ` : '';
  const discount =
    line.discountCents === 0n
      ? []
      : [`discount ${formatCents(line.discountCents)}, borne by ${bearerWords(line.borneBy)}`];
  return [
    `${line.sku}${number}`,
    `sold ${formatDay(line.soldOn, 'short')}`,
    `retail ${many}${formatCents(line.retailCents)}`,
    ...discount,
    `their share ${formatCents(line.shareCents)}`,
  ].join(' · ');
}

function writeSums(paper: Paper, statement: StatementPaper): void {
  const { lines, dueCents, dueOn, payments, owedCents } = statement;
  keepTogether(paper, 90 + 14 * payments.length);
  const retailCents = sumCents(lines.map((line) => line.retailCents * BigInt(line.quantity)));
  paper.moveDown(0.5).font('sans').fontSize(9.5);
  wordsAndFigure(paper, 'Retail in all', formatCents(retailCents));
  const shares = sumCents(lines.map((line) => line.shareCents));
  wordsAndFigure(paper, 'Their share in all', formatCents(shares));
  paper.moveDown(0.3).font('bold').fontSize(13);
  wordsAndFigure(paper, `Due ${formatDay(dueOn, 'short')}`, formatCents(dueCents));
  paper.moveDown(0.3).font('sans').fontSize(9.5);
  for (const payment of payments) {
    const words = `Received ${formatDay(payment.on, 'short')}, ${tenderWords[payment.kind]}`;
    wordsAndFigure(paper, words, formatCents(payment.amountCents));
  }
  if (payments.length > 0) wordsAndFigure(paper, 'Still to be paid', formatCents(owedCents));
}
