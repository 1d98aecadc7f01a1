import 'server-only';
import { formatDay, type Day } from '@/lib/dates/rules';
import { ash, iron, keepTogether, ruleLine, sizeOf, type Paper } from '../paper';

/** The head of a commission's paper: what it is, whose, for which work. */
export type PaperHead = {
  readonly title: string;
  readonly work: string;
  readonly collector: string;
  readonly commissionNumber: number;
  readonly on: Day;
};

/** Writes the head: the paper's name, the work in italics, for whom and when. */
export function writePaperHead(paper: Paper, head: PaperHead): void {
  paper.font('serif').fontSize(18).fillColor(iron).text(head.title);
  paper.font('italic').fontSize(13).text(head.work);
  paper.font('sans').fontSize(9.5).fillColor(ash);
  paper.text(
    `For ${head.collector} · commission ${head.commissionNumber} · ${formatDay(head.on, 'long')}`,
  );
  paper.fillColor(iron).moveDown(0.5);
  ruleLine(paper);
  paper.moveDown(0.3);
}

/** A small heading, kept with what follows. */
export function writeHeading(paper: Paper, words: string): void {
  keepTogether(paper, 60);
  paper.moveDown(0.5).font('serif').fontSize(12.5).fillColor(iron).text(words).moveDown(0.15);
  paper.font('sans').fontSize(10);
}

/** A paragraph in the working hand; nothing for no words. */
export function writeWords(paper: Paper, words: string): void {
  if (words.trim() === '') return;
  paper.font('sans').fontSize(10).fillColor(iron).text(words, { lineGap: 2 }).moveDown(0.25);
}

/** A picture, at most as wide as the page and as high as said; pdf takes JPEG and PNG alone. */
export function writePicture(paper: Paper, bytes: Uint8Array, heightMost: number): void {
  const { width, margin } = sizeOf(paper);
  keepTogether(paper, heightMost + 12);
  const top = paper.y;
  paper.image(Buffer.from(bytes), margin, top, {
    fit: [width - 2 * margin, heightMost],
    align: 'center',
  });
  paper.y = top + heightMost + 10;
  paper.x = margin;
}

/** Lines to sign on, side by side: the name of each under its line. */
export function writeSignLines(paper: Paper, names: readonly string[]): void {
  keepTogether(paper, 80);
  const { width, margin } = sizeOf(paper);
  const gap = 24;
  const each = (width - 2 * margin - gap * (names.length - 1)) / names.length;
  const y = paper.y + 44;
  names.forEach((name, at) => {
    const x = margin + at * (each + gap);
    paper
      .moveTo(x, y)
      .lineTo(x + each, y)
      .lineWidth(0.6)
      .strokeColor(iron)
      .stroke();
    paper
      .font('sans')
      .fontSize(8.5)
      .fillColor(ash)
      .text(name, x, y + 4, { width: each });
  });
  paper.fillColor(iron);
  paper.x = margin;
  paper.y = y + 24;
}

/** The hash of what the paper says, in short, so that the paper and the page can be held together. */
export function writeHashFoot(paper: Paper, sha256: string): void {
  paper.moveDown(0.6).font('sans').fontSize(8).fillColor(ash);
  paper.text(`This text is kept under ${sha256.slice(0, 16)}…`).fillColor(iron);
}
