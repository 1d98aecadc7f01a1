import 'server-only';
import {
  marksOf,
  marksSentence,
  type Chapter,
  type Entry,
  type Mark,
} from '@/lib/commissions/rules/evidence/chapters';
import { formatDay, type Day } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import {
  ash,
  fullPageOf,
  iron,
  keepTogether,
  makePaper,
  ruleLine,
  sizeOf,
  type Paper,
} from '../paper';
import { writeHeading, writePaperHead, writePicture, writeWords } from './page';

/** Everything that the evidence of a commission holds. */
export type EvidenceFile = {
  work: string;
  collector: string;
  commissionNumber: number;
  on: Day;
  chapters: readonly Chapter[];
  /** By file, as JPEG; what is missing is left out. */
  pictures: ReadonlyMap<string, Uint8Array>;
};

const contentsLine = 18;

/**
 * The evidence as one PDF: a cover with its contents and what the marks come to, then each chapter.
 */
export async function evidencePdf(
  file: EvidenceFile,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const write = (paper: Paper) => {
    writePaperHead(paper, { ...file, title: 'Evidence' });
    writeWords(paper, marksSentence(marksOf(file.chapters)));
    writeHeading(paper, 'What is in it');
    const contentsAt = paper.y;
    paper.addPage();
    const begins = file.chapters.map((chapter) => {
      keepTogether(paper, 150);
      const page = paper.bufferedPageRange().count;
      writeChapter(paper, chapter, file.pictures);
      return page;
    });
    writeContents(paper, { chapters: file.chapters, begins, contentsAt });
  };
  return makePaper(`Evidence: ${file.work}`, gallery, write, fullPageOf(gallery));
}

type Contents = { chapters: readonly Chapter[]; begins: readonly number[]; contentsAt: number };

/** Written last, when the page of each chapter is known. */
function writeContents(paper: Paper, { chapters, begins, contentsAt }: Contents): void {
  paper.switchToPage(0);
  const { width, margin } = sizeOf(paper);
  paper.font('sans').fontSize(10.5).fillColor(iron);
  chapters.forEach(({ title, entries }, at) => {
    const y = contentsAt + at * contentsLine;
    const many = entries.length === 0 ? 'nothing' : String(entries.length);
    paper.text(`${title}: ${many}`, margin, y, { lineBreak: false });
    paper.text(String(begins[at] ?? ''), margin, y, { width: width - 2 * margin, align: 'right' });
  });
}

function writeChapter(
  paper: Paper,
  { title, entries }: Chapter,
  pictures: ReadonlyMap<string, Uint8Array>,
): void {
  paper.font('serif').fontSize(16).fillColor(iron).text(title);
  ruleLine(paper);
  if (entries.length === 0) writeWords(paper, 'Nothing.');
  for (const entry of entries) writeEntry(paper, entry, pictures);
  paper.moveDown(1.5);
}

function writeEntry(
  paper: Paper,
  { title, on, lines, pictures: shown, drawing, mark }: Entry,
  pictures: ReadonlyMap<string, Uint8Array>,
): void {
  writeHeading(paper, title);
  if (on) writeQuiet(paper, formatDay(on, 'long'));
  for (const line of lines.filter((each) => each !== '')) {
    keepTogether(paper, 26);
    writeWords(paper, line);
  }
  for (const { fileId, alt } of shown) {
    const bytes = pictures.get(fileId);
    if (!bytes) continue;
    writePicture(paper, bytes, shown.length > 1 ? 150 : 210);
    writeQuiet(paper, alt);
  }
  const drawn = drawing === null ? undefined : pictures.get(drawing);
  if (drawn) writePicture(paper, drawn, 60);
  if (mark) writeMark(paper, mark);
}

function writeQuiet(paper: Paper, words: string): void {
  paper.font('sans').fontSize(8.5).fillColor(ash).text(words).fillColor(iron).moveDown(0.2);
}

function writeMark(paper: Paper, { sha256, fits }: Mark): void {
  writeQuiet(paper, `${fits ? 'Fits its mark' : 'DOES NOT FIT its mark'}: SHA-256 ${sha256}`);
}
