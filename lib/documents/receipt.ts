import 'server-only';
import { formatInstant } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import type { Receipt, ReceiptLine } from '@/lib/sales/reads/receipts';
import {
  ash,
  halfLetter,
  iron,
  keepTogether,
  makePaper,
  ruleLine,
  wordsAndFigure,
  type Paper,
} from './paper';
import { tenderWords } from './rules';

/** The whole receipt, or the one that goes with a gift and names no price. */
export type ReceiptKind = 'whole' | 'gift';

/**
 * The receipt as a PDF: number, when and by whom, lines, tax by authority, how it was paid, what
 * went back, and the return terms. The gift receipt leaves every amount out, and keeps the number.
 */
export async function receiptPdf(
  receipt: Receipt,
  gallery: Gallery,
  kind: ReceiptKind,
): Promise<Uint8Array<ArrayBuffer>> {
  const name = kind === 'gift' ? 'Gift receipt' : 'Receipt';
  return makePaper(`${name} ${receipt.number}`, gallery, (paper) => {
    writeTitle(paper, `${name} ${receipt.number}`, receipt, gallery.timeZone);
    ruleLine(paper);
    for (const line of receipt.lines) writeLine(paper, line, kind);
    if (kind === 'whole') writeSums(paper, receipt);
    writeTerms(paper, gallery, kind);
  });
}

function writeTitle(paper: Paper, title: string, receipt: Receipt, zone: string): void {
  paper.font('serif').fontSize(14).text(title);
  paper.font('sans').fontSize(9.5).fillColor(ash);
  paper.text(`${formatInstant(receipt.soldAt, zone)} · ${receipt.soldBy}`);
  if (receipt.collector) paper.text(`For ${receipt.collector.name}`);
  paper.fillColor(iron).moveDown(0.4);
}

function writeLine(paper: Paper, line: ReceiptLine, kind: ReceiptKind): void {
  keepTogether(paper, 44);
  const figure = kind === 'whole' ? formatCents(line.netCents) : '';
  titleAndPrice(paper, line.title, figure);
  paper.font('sans').fontSize(8.5).fillColor(ash).text(line.what);
  if (line.quantity > 1) {
    const each = kind === 'whole' ? ` at ${formatCents(line.unitPriceCents)} each` : '';
    paper.text(`${line.quantity} of them${each}`);
  }
  paper.fillColor(iron).moveDown(0.6);
}

/** The title as on a wall label; the price in the figures of the sums under it. */
function titleAndPrice(paper: Paper, title: string, price: string): void {
  const top = paper.y;
  paper.font('sans').fontSize(9.5);
  wordsAndFigure(paper, ' ', price);
  const { width, margin } = halfLetter;
  const room = width - 2 * margin - (price === '' ? 0 : paper.widthOfString(price) + 14);
  paper
    .font('italic')
    .fontSize(12)
    .text(title, margin, top - 2, { width: room });
}

function writeSums(paper: Paper, receipt: Receipt): void {
  keepTogether(paper, 90 + 14 * (receipt.taxes.length + receipt.tenders.length));
  paper.moveDown(0.5).font('sans').fontSize(9.5);
  wordsAndFigure(paper, 'Before tax', formatCents(receipt.netCents));
  for (const tax of receipt.taxes) {
    const words = `Sales tax, ${tax.authority} ${tax.ratePercent}%`;
    wordsAndFigure(paper, words, formatCents(tax.taxCents));
  }
  paper.moveDown(0.3).font('bold').fontSize(13);
  wordsAndFigure(paper, 'Total', formatCents(receipt.totalCents));
  paper.moveDown(0.3).font('sans').fontSize(9.5);
  for (const tender of receipt.tenders) {
    const reference = tender.reference === '' ? '' : `, ${tender.reference}`;
    const amountCents = tender.givenCents ?? tender.amountCents;
    const words = tender.givenCents === null ? tenderWords[tender.kind] : 'Cash given';
    wordsAndFigure(paper, words + reference, formatCents(amountCents));
  }
  const byCash = receipt.tenders.some((tender) => tender.givenCents !== null);
  if (byCash) wordsAndFigure(paper, 'Given back', formatCents(receipt.changeCents));
}

function writeTerms(paper: Paper, gallery: Gallery, kind: ReceiptKind): void {
  keepTogether(paper, 60);
  paper.moveDown(1.2).font('sans').fontSize(8.5).fillColor(ash);
  if (kind === 'gift') {
    paper.text('A gift. Bring this paper to exchange it; the number finds the sale.');
  }
  if (gallery.returnTerms) paper.text(gallery.returnTerms);
  paper.fillColor(iron);
}
