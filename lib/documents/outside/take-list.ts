import 'server-only';
import { formatDay } from '@/lib/dates/rules';
import type { FairSheet } from '@/lib/fairs/reads';
import type { TakenPiece } from '@/lib/fairs/reads/standing';
import { formatCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import {
  ash,
  halfLetter,
  iron,
  keepTogether,
  makePaper,
  ruleLine,
  wordsAndFigure,
  type Paper,
} from '../paper';

/**
 * The take list of a fair as a PDF: each piece with its SKU, how many, its price there, and a box
 * to tick for each one that comes back.
 */
export async function takeListPdf(
  { fair, list }: FairSheet,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  return makePaper(`Take list: ${fair.name}`, gallery, (paper) => {
    paper.font('serif').fontSize(14).text(`Take list: ${fair.name}`);
    const until = fair.fromOn === fair.untilOn ? '' : ` to ${formatDay(fair.untilOn, 'short')}`;
    const where = fair.town === '' ? '' : ` · ${fair.town}`;
    paper.font('sans').fontSize(9.5).fillColor(ash);
    paper.text(`${formatDay(fair.fromOn, 'short')}${until}${where}`);
    paper.fillColor(iron).moveDown(0.4);
    ruleLine(paper);
    for (const piece of list) writePiece(paper, piece);
    if (list.length === 0) paper.font('sans').fontSize(9.5).text('Nothing is taken along yet.');
    const pieces = list.reduce((sum, piece) => sum + piece.out, 0);
    paper.moveDown(0.5).font('bold').fontSize(11);
    wordsAndFigure(paper, 'Pieces together', String(pieces));
  });
}

/** The most boxes that one piece gets; more are counted by hand. */
const boxesMost = 24;
const box = { side: 8, gap: 4 } as const;

function writePiece(paper: Paper, piece: TakenPiece): void {
  keepTogether(paper, 46);
  const price = formatCents(piece.fairPriceCents ?? piece.homePriceCents);
  paper.font('sans').fontSize(10);
  wordsAndFigure(paper, `${piece.out} × ${piece.title}`, price);
  const numbers = piece.numbers.length === 0 ? '' : ` · number ${piece.numbers.join(', ')}`;
  paper.font('sans').fontSize(8.5).fillColor(ash);
  paper.text(`${piece.sku} · ${piece.size} · ${piece.what}${numbers}`);
  const top = paper.y + 3;
  for (let at = 0; at < Math.min(piece.out, boxesMost); at += 1) {
    const x = halfLetter.margin + at * (box.side + box.gap);
    paper.rect(x, top, box.side, box.side).lineWidth(0.6).strokeColor(ash).stroke();
  }
  paper.y = top + box.side + 8;
  paper.fillColor(iron);
}
