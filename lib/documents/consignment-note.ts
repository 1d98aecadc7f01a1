import 'server-only';
import type { NotePaper } from '@/lib/consignment/reads/papers';
import { addDays, formatDay } from '@/lib/dates/rules';
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
} from './paper';
import { pieceLine } from './transfer-note';

/**
 * The consignment note as a PDF, to be signed by both: what goes at which retail price, whose it
 * stays, the share, when it is paid, who insures it. The way back is the same with fewer words.
 */
export async function consignmentNotePdf(
  note: NotePaper,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const name = note.isBack ? 'Pieces taken back' : 'Consignment note';
  return makePaper(`${name} ${note.number}`, gallery, (paper) => {
    paper.font('serif').fontSize(14).text(`${name} ${note.number}`);
    paper.font('sans').fontSize(9.5).fillColor(ash).text(formatDay(note.on, 'long'));
    paper.text(`${note.isBack ? 'From' : 'To'} ${note.gallery.name}`);
    if (note.gallery.address) paper.text(note.gallery.address);
    paper.fillColor(iron).moveDown(0.4);
    ruleLine(paper);
    writeLines(paper, note);
    if (!note.isBack) writeTerms(paper, note, gallery);
    writeSignatures(paper, [gallery.name, note.gallery.name]);
  });
}

function writeLines(paper: Paper, note: NotePaper): void {
  for (const line of note.lines) {
    const number = line.number === null ? '' : ` · number ${line.number}`;
    const many = line.quantity > 1 ? ` · ${line.quantity} at ${formatCents(line.retailCents)}` : '';
    pieceLine(paper, {
      title: line.title,
      what: `${line.sku} · ${line.what}${number}${many}`,
      figure: formatCents(line.retailCents * BigInt(line.quantity)),
    });
  }
  keepTogether(paper, 40);
  paper.moveDown(0.3).font('bold').fontSize(11);
  const pieces = note.pieces === 1 ? '1 piece' : `${note.pieces} pieces`;
  wordsAndFigure(paper, `${pieces}, at retail`, formatCents(note.retailCents));
  if (note.note) paper.moveDown(0.4).font('sans').fontSize(9.5).text(note.note);
}

/** What both sign, in the words that the trade uses; a lawyer looks at them where much is at stake. */
function writeTerms(paper: Paper, note: NotePaper, gallery: Gallery): void {
  const { sharePercent, payDays, terms, name } = note.gallery;
  const days = payDays === 1 ? '1 day' : `${payDays} days`;
  const sentences = [
    `The pieces stay the property of ${gallery.name} until they are paid for.`,
    `${name} keeps ${sharePercent}% of the retail price. The rest is paid within ${days} after the ` +
      'last day of each statement.',
    'A discount is agreed beforehand, with who bears it; otherwise the gallery bears it.',
    `${name} insures the pieces at our part of the retail price from the moment they arrive until ` +
      'they are sold or back, and pays that part for what is lost or broken.',
    `What has found nobody by ${formatDay(addDays(note.on, 120), 'short')} may be swapped.`,
    ...(terms === '' ? [] : [terms]),
  ];
  paper.moveDown(1).font('sans').fontSize(8.5);
  for (const sentence of sentences) {
    keepTogether(paper, 30);
    paper.text(sentence).moveDown(0.35);
  }
}

function writeSignatures(paper: Paper, names: readonly string[]): void {
  keepTogether(paper, 90);
  paper.moveDown(2.4);
  const { margin, width } = halfLetter;
  const each = (width - 2 * margin - 24) / 2;
  const top = paper.y;
  for (const [at, name] of names.entries()) {
    const left = margin + at * (each + 24);
    paper
      .moveTo(left, top)
      .lineTo(left + each, top)
      .lineWidth(0.6)
      .strokeColor(iron)
      .stroke();
    paper.font('sans').fontSize(8).fillColor(ash);
    paper.text(`${name}, day and signature`, left, top + 4, { width: each });
  }
  paper.fillColor(iron);
}
