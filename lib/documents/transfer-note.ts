import 'server-only';
import { formatDay } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import type { MovePaper } from '@/lib/stock/reads/moves/papers';
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

/** The paper that goes with pieces from one of our places to another, to be ticked off there. */
export async function transferNotePdf(
  move: MovePaper,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  return makePaper(`Move ${move.number}`, gallery, (paper) => {
    paper.font('serif').fontSize(14).text(`Move ${move.number}`);
    paper.font('sans').fontSize(9.5).fillColor(ash);
    paper.text(`${formatDay(move.movedOn, 'short')} · ${move.by}`);
    paper.text(`From ${move.from} to ${move.to}`);
    paper.fillColor(iron).moveDown(0.4);
    ruleLine(paper);
    for (const { piece, quantity, numbers } of move.lines) {
      const numbered = numbers.length === 0 ? '' : ` · number ${numbers.join(', ')}`;
      pieceLine(paper, {
        title: piece.title,
        what: `${piece.code} · ${piece.what}${numbered}`,
        figure: String(quantity),
      });
    }
    paper.moveDown(0.4).font('bold').fontSize(11);
    wordsAndFigure(paper, 'Pieces together', String(move.pieces));
    if (move.note) paper.moveDown(0.6).font('sans').fontSize(9.5).text(move.note);
  });
}

/** A piece on a paper: its title in italics, what it is under it, a plain figure at the right. */
export function pieceLine(
  paper: Paper,
  line: { title: string; what: string; figure: string },
): void {
  keepTogether(paper, 40);
  const { width, margin } = halfLetter;
  const top = paper.y;
  paper.font('sans').fontSize(9.5);
  wordsAndFigure(paper, ' ', line.figure);
  const room = width - 2 * margin - paper.widthOfString(line.figure) - 14;
  paper
    .font('italic')
    .fontSize(12)
    .text(line.title, margin, top - 2, { width: room });
  paper.font('sans').fontSize(8.5).fillColor(ash).text(line.what);
  paper.fillColor(iron).moveDown(0.5);
}
