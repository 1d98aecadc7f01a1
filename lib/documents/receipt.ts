import 'server-only';
import { formatDay, formatInstant } from '@/lib/dates/rules';
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
import {
  deliveryWords,
  discountWords,
  finalWords,
  numbersOfLine,
  quantityWords,
  returnWords,
  tenderLine,
} from './receipt-words';

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
    const title = `${name} ${receipt.number}`;
    writeTitle(paper, receipt, { title, kind, zone: gallery.timeZone });
    ruleLine(paper);
    for (const line of receipt.lines) writeLine(paper, line, kind);
    if (kind === 'whole') writeSums(paper, receipt);
    writeTerms(paper, gallery, kind);
  });
}

type Head = { title: string; kind: ReceiptKind; zone: string };

function writeTitle(paper: Paper, receipt: Receipt, { title, kind, zone }: Head): void {
  paper.font('serif').fontSize(14).text(title);
  paper.font('sans').fontSize(9.5).fillColor(ash);
  paper.text(`${formatInstant(receipt.soldAt, zone)} · ${receipt.soldBy}`);
  if (receipt.collector && kind === 'whole') paper.text(`For ${receipt.collector.name}`);
  if (receipt.fair) paper.text(`At the fair: ${receipt.fair}`);
  const delivery = deliveryWords(receipt);
  if (delivery !== '') paper.text(delivery);
  paper.fillColor(iron);
  if (receipt.giftTo !== '') paper.font('italic').fontSize(12).text(`For ${receipt.giftTo}`);
  if (receipt.giftWords !== '') paper.font('sans').fontSize(9.5).text(receipt.giftWords);
  paper.moveDown(0.4);
}

function writeLine(paper: Paper, line: ReceiptLine, kind: ReceiptKind): void {
  keepTogether(paper, 44);
  const figure = kind === 'whole' ? formatCents(line.netCents) : '';
  titleAndPrice(paper, line.title, figure);
  paper.font('sans').fontSize(8.5).fillColor(ash);
  for (const words of smallWords(line, kind)) paper.text(words);
  paper.fillColor(iron).moveDown(0.6);
}

function smallWords(line: ReceiptLine, kind: ReceiptKind): string[] {
  const { hangsUntilOn, voucher } = line;
  const ofPrice = kind === 'whole' ? line.discounts.map(discountWords) : [];
  return [
    line.what,
    numbersOfLine(line.numbers),
    quantityWords(line, kind === 'gift'),
    finalWords(line.flaw),
    ...ofPrice,
    hangsUntilOn ? `Sold, hangs with us until ${formatDay(hangsUntilOn, 'short')}` : '',
    voucher && kind === 'whole' ? `Number ${voucher.code}` : '',
  ].filter((words) => words !== '');
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
  if (receipt.exemptWhy !== '') {
    wordsAndFigure(paper, `No tax, or less of it: ${receipt.exemptWhy}`, '');
  }
  paper.moveDown(0.3).font('bold').fontSize(13);
  wordsAndFigure(paper, 'Total', formatCents(receipt.totalCents));
  paper.moveDown(0.3).font('sans').fontSize(9.5);
  for (const tender of receipt.tenders) {
    const amountCents = tender.givenCents ?? tender.amountCents;
    wordsAndFigure(paper, tenderLine(tender), formatCents(amountCents));
  }
  const byCash = receipt.tenders.some((tender) => tender.givenCents !== null);
  if (byCash) wordsAndFigure(paper, 'Given back', formatCents(receipt.changeCents));
  for (const back of receipt.returns) {
    wordsAndFigure(paper, returnWords(back), formatCents(-back.totalCents));
  }
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
