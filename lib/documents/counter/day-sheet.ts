import 'server-only';
import { formatDay, formatInstant } from '@/lib/dates/rules';
import type { DaySheet } from '@/lib/drawer/reads/day-sheet';
import {
  moneyInKinds,
  moneyInNames,
  moneyInSum,
  newMoneyKinds,
} from '@/lib/drawer/rules/day-sheet';
import { formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import { ash, iron, keepTogether, makePaper, ruleLine, wordsAndFigure, type Paper } from '../paper';
import { tenderWords } from '../rules';
import { cardWords, foundLines, piecesCounted } from './day-sheet-words';

/** The day's sheet as a PDF: the drawer, the count, the money in by its kinds, the cheques. */
export async function daySheetPdf(
  sheet: DaySheet,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { count } = sheet;
  return makePaper(`Day’s end ${count.number}`, gallery, (paper) => {
    paper.font('serif').fontSize(14).text(`Day’s end ${count.number}`);
    paper.font('sans').fontSize(9.5).fillColor(ash);
    paper.text(formatDay(count.on, 'long'));
    paper.text(`Counted ${formatInstant(count.at, gallery.timeZone)} by ${count.by}`);
    paper.fillColor(iron).moveDown(0.4);
    ruleLine(paper);
    writeDrawer(paper, sheet);
    writeMoneyIn(paper, sheet);
    writePieces(paper, sheet);
    keepTogether(paper, 60);
    paper.moveDown(2).font('sans').fontSize(9.5).text('Signed:');
  });
}

function heading(paper: Paper, words: string, lines: number): void {
  keepTogether(paper, 30 + 14 * Math.min(lines, 20));
  paper.moveDown(0.8).font('bold').fontSize(10.5).text(words);
  paper.font('sans').fontSize(9.5);
}

function writeDrawer(paper: Paper, { count, money }: DaySheet): void {
  heading(paper, 'The drawer', money.sheet.length + 6);
  for (const line of money.sheet) wordsAndFigure(paper, line.words, formatCents(line.cents));
  paper.font('bold');
  wordsAndFigure(paper, 'Should be in the drawer', formatCents(count.expectedCents));
  paper.font('sans');
  for (const line of foundLines(count)) wordsAndFigure(paper, line.words, formatCents(line.cents));
  if (count.reason !== '') paper.text(`Why it differs: ${count.reason}`);
}

function writeMoneyIn(paper: Paper, sheet: DaySheet): void {
  const { money } = sheet;
  const names = moneyInKinds.filter((kind) => money.moneyIn[kind] !== 0n);
  heading(paper, 'Money in', names.length + 8);
  for (const kind of names) {
    wordsAndFigure(paper, moneyInNames[kind], formatCents(money.moneyIn[kind]));
  }
  paper.font('bold');
  wordsAndFigure(paper, 'Came in', formatCents(moneyInSum(money.moneyIn)));
  paper.font('sans');
  for (const kind of newMoneyKinds) {
    if (money.paid[kind] !== 0n) {
      wordsAndFigure(paper, `By ${lower(tenderWords[kind])}`, formatCents(money.paid[kind]));
    }
    if (money.refunded[kind] !== 0n) {
      const words = `Given back by ${lower(tenderWords[kind])}`;
      wordsAndFigure(paper, words, formatCents(-money.refunded[kind]));
    }
  }
  paper.text(cardWords(sheet));
  for (const cheque of money.cheques) {
    const words = ['Cheque', cheque.from, cheque.reference].filter(Boolean).join(', ');
    wordsAndFigure(paper, words, formatCents(cheque.amountCents));
  }
}

function writePieces(paper: Paper, { count }: DaySheet): void {
  const pieces = piecesCounted(count.pieces);
  if (pieces.length === 0) return;
  heading(paper, 'Notes and coins', pieces.length);
  for (const { name, many, cents } of pieces) {
    wordsAndFigure(paper, `${many} × ${name}`, formatCents(cents));
  }
}

function lower(words: string): string {
  return words.toLowerCase();
}
