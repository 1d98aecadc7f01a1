import 'server-only';
import type { HandOverPaper } from '@/lib/commissions/reads/agreement/hand-over-for';
import type { HandOverFacts } from '@/lib/commissions/rules/agreement/hand-over';
import type { Day } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import { fullPageOf, iron, keepTogether, makePaper, sizeOf, type Paper } from '../paper';
import { writeBody, writeSignature } from './agreement';
import { writeHashFoot, writeHeading, writePaperHead, writeSignLines, writeWords } from './page';

/** The hand-over as a paper, and the day it is printed on while it is still to come. */
export type HandOverSheet = {
  paper: HandOverPaper;
  today: Day;
  /** The drawn signature as a JPEG. */
  drawing: Uint8Array | null;
};

/**
 * The hand-over as a PDF: as it was signed, or with lines to sign on at the wall before it is.
 */
export async function handOverPdf(
  { paper: told, today, drawing }: HandOverSheet,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { facts, handed } = told;
  const { title: work, collector, commissionNumber } = facts;
  const write = (paper: Paper) => {
    const on = handed?.handedOn ?? today;
    writePaperHead(paper, { title: 'Hand-over', work, collector, commissionNumber, on });
    if (handed) writeBody(paper, handed.body);
    else writeToFillIn(paper, facts);
    if (handed?.signature) writeSignature(paper, handed.signature, { drawing, gallery });
    else writeSignLines(paper, ['For the gallery, and the day', 'Whoever takes it, and the day']);
    if (handed?.contentSha256) writeHashFoot(paper, handed.contentSha256);
  };
  return makePaper(`Hand-over: ${work}`, gallery, write, fullPageOf(gallery));
}

/** Before it is signed: what is known, and room for what is said at the wall. */
function writeToFillIn(paper: Paper, { sizeWords, parts, fixings }: HandOverFacts): void {
  writeWords(paper, sizeWords ?? '');
  writeHeading(paper, 'Parts, counted');
  writeBox(paper, parts === null ? 'Handed over: ____ parts' : `All ${parts} parts are here`);
  writeHeading(paper, 'How it is fixed');
  writeWords(paper, fixings);
  if (fixings === '') writeBlankLines(paper, 2);
  writeHeading(paper, 'How to look after it');
  writeBox(paper, 'It was told, and the paper about it given');
  writeHeading(paper, 'It was looked over. Remarks');
  writeBlankLines(paper, 4);
  paper.moveDown(0.4);
  writeWords(
    paper,
    'From this day on the piece is theirs. What is owed by the agreement stays owed.',
  );
}

/** A box to tick, and what it says. */
function writeBox(paper: Paper, words: string): void {
  const { margin } = sizeOf(paper);
  keepTogether(paper, 20);
  const top = paper.y;
  paper.rect(margin, top, 11, 11).lineWidth(0.8).strokeColor(iron).stroke();
  paper.font('sans').fontSize(10).fillColor(iron);
  paper.text(words, margin + 20, top + 0.5);
  paper.x = margin;
  paper.moveDown(0.25);
}

function writeBlankLines(paper: Paper, many: number): void {
  const { width, margin } = sizeOf(paper);
  keepTogether(paper, many * 22 + 6);
  for (let line = 0; line < many; line += 1) {
    const y = paper.y + 20;
    paper
      .moveTo(margin, y)
      .lineTo(width - margin, y)
      .lineWidth(0.4)
      .strokeColor(iron)
      .stroke();
    paper.y = y + 2;
  }
}
