import 'server-only';
import { formatDay } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import type { InvoiceTold, OrderLineTold, OrderSheet } from '@/lib/wholesale/reads/order';
import { ash, iron, keepTogether, makePaper, ruleLine, wordsAndFigure, type Paper } from '../paper';
import { tenderWords } from '../rules';

/**
 * A shop's invoice as a PDF: its number and theirs, where it went, each line at the shop's price,
 * freight, why no sales tax was charged, what came, what is owed and by when, and the terms.
 */
export async function shopInvoicePdf(
  order: OrderSheet,
  invoice: InvoiceTold,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  return makePaper(`Invoice ${invoice.number}`, gallery, (paper) => {
    writeHead(paper, order, invoice);
    ruleLine(paper);
    for (const line of order.lines) writeLine(paper, line);
    writeSums(paper, order, invoice);
    writeTerms(paper, order, invoice);
  });
}

function writeHead(paper: Paper, order: OrderSheet, invoice: InvoiceTold): void {
  paper.font('serif').fontSize(14).text(`Invoice ${invoice.number}`);
  paper.font('sans').fontSize(9.5);
  paper.text(invoice.deliverTo === '' ? order.shop.name : invoice.deliverTo);
  paper.fontSize(8.5).fillColor(ash).moveDown(0.4);
  const theirs = order.theirNumber === '' ? '' : ` · your number ${order.theirNumber}`;
  paper.text(`Sent ${formatDay(invoice.soldOn, 'short')} · order ${order.number}${theirs}`);
  paper.fillColor(iron).moveDown(0.4);
}

function writeLine(paper: Paper, line: OrderLineTold): void {
  keepTogether(paper, 34);
  paper.font('sans').fontSize(9.5);
  wordsAndFigure(paper, `${line.quantity} × ${line.title}`, formatCents(line.amountCents));
  paper.fontSize(8.5).fillColor(ash);
  paper.text(`${line.sku} · ${line.what} · ${formatCents(line.unitPriceCents)} each`);
  paper.fillColor(iron).moveDown(0.5);
}

function writeSums(paper: Paper, order: OrderSheet, invoice: InvoiceTold): void {
  keepTogether(paper, 100 + 14 * invoice.payments.length);
  paper.moveDown(0.4).font('sans').fontSize(9.5);
  if (order.freightCents > 0n) wordsAndFigure(paper, 'Freight', formatCents(order.freightCents));
  wordsAndFigure(paper, 'Sales tax', formatCents(0n));
  paper.fontSize(8.5).fillColor(ash).text(invoice.exemptWhy).fillColor(iron);
  paper.moveDown(0.3).font('bold').fontSize(13);
  wordsAndFigure(paper, 'Total', formatCents(invoice.totalCents));
  paper.moveDown(0.3).font('sans').fontSize(9.5);
  const { paidFirst } = invoice;
  if (paidFirst) {
    const words = `Paid before it left, ${tenderWords[paidFirst.kind].toLowerCase()}`;
    wordsAndFigure(paper, words, formatCents(paidFirst.cents));
  }
  for (const payment of invoice.payments) {
    const words = `Received ${formatDay(payment.receivedOn, 'short')}, ${tenderWords[payment.kind].toLowerCase()}`;
    wordsAndFigure(paper, words, formatCents(payment.amountCents));
  }
  wordsAndFigure(paper, 'Still to be paid', formatCents(invoice.owedCents));
}

function writeTerms(paper: Paper, order: OrderSheet, invoice: InvoiceTold): void {
  keepTogether(paper, 60);
  paper.moveDown(0.8).font('bold').fontSize(10);
  if (invoice.owedCents > 0n) paper.text(`Due ${formatDay(invoice.dueOn, 'long')}`);
  paper.font('sans').fontSize(8.5).fillColor(ash);
  if (order.terms !== '') paper.moveDown(0.4).text(order.terms);
  paper.fillColor(iron);
}
