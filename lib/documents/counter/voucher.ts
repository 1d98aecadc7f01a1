import 'server-only';
import { formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import type { CreditPaper } from '@/lib/vouchers/reads/list';
import { creditWords, untilWords } from '@/lib/vouchers/rules';
import { drawQr } from '../labels/codes';
import { ash, halfLetter, iron, makePaper, ruleLine, type Paper } from '../paper';

const qrSide = 150;

/**
 * The voucher as it is handed over: what it is worth, its number in letters and as a code to be
 * scanned, for whom, until when, and how it is used.
 *
 * A voucher says what was paid for it; a store credit, or one that was used, what is on it now.
 */
export async function voucherPdf(
  credit: CreditPaper,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const name = creditWords[credit.kind];
  return makePaper(`${name} ${credit.code}`, gallery, (paper) => {
    ruleLine(paper);
    paper.moveDown(0.6).font('italic').fontSize(22).text(name);
    const worth = credit.moves.length > 1 ? credit.balanceCents : credit.firstCents;
    paper.font('serif').fontSize(44).text(formatCents(worth), { lineGap: 4 });
    if (credit.collector) writeQuiet(paper, `For ${credit.collector.name}`);
    writeCode(paper, credit.code);
    paper.moveDown(1).font('sans').fontSize(9.5);
    paper.text('Pays for any piece here, in parts if you like. What is left stays on it.');
    paper.text(`${untilWords(credit.expiresOn)} Keep it like money: whoever brings it may use it.`);
  });
}

function writeCode(paper: Paper, code: string): void {
  const { width, margin } = halfLetter;
  const top = paper.y + 10;
  drawQr(paper, code, { x: (width - qrSide) / 2, y: top, side: qrSide });
  paper.fillColor(iron).font('bold').fontSize(16);
  paper.text(code, margin, top + qrSide + 6, { width: width - 2 * margin, align: 'center' });
}

function writeQuiet(paper: Paper, words: string): void {
  paper.font('sans').fontSize(11).fillColor(ash).text(words).fillColor(iron);
}
