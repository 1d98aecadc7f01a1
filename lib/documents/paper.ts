import 'server-only';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import PDFDocument from 'pdfkit';
import { addressLines } from './rules';

/** A page being written: pdfkit's own, with our hands registered as serif, italic, sans and bold. */
export type Paper = InstanceType<typeof PDFDocument>;

/** Half a letter page, upright: 5.5 by 8.5 inches, in points. */
export const halfLetter = { width: 396, height: 612, margin: 40 } as const;

const faces = {
  serif: 'alegreya-400-normal',
  italic: 'alegreya-400-italic',
  sans: 'source-sans-3-400-normal',
  bold: 'source-sans-3-600-normal',
} as const;

/** The full pages that a gallery prints on, in points. */
export const fullPages = {
  letter: { width: 612, height: 792, margin: 60 },
  a4: { width: 595.28, height: 841.89, margin: 60 },
} as const;

/** A page's size, in points. */
export type PageSize = { readonly width: number; readonly height: number; readonly margin: number };

/** The full page of a gallery's setting: US Letter, or A4. */
export function fullPageOf(gallery: { paperSize: 'letter' | 'a4' }): PageSize {
  return fullPages[gallery.paperSize];
}

/** The gallery as it stands at the head of every paper. */
export type PaperGallery = Parameters<typeof addressLines>[0] & { name: string; tagline: string };

/**
 * Makes a paper and writes it with `write`.
 *
 * @param size half a letter page unless another is named; see {@link fullPageOf}
 * @returns the bytes of a PDF with real text and its own type in it
 */
export async function makePaper(
  title: string,
  gallery: PaperGallery,
  write: (paper: Paper) => void,
  size: PageSize = halfLetter,
): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height, margin } = size;
  const paper = new PDFDocument({
    size: [width, height],
    margin,
    bufferPages: true,
    lang: 'en-US',
    displayTitle: true,
    info: { Title: title, Author: gallery.name, Creator: gallery.name },
  });
  const parts: Uint8Array[] = [];
  paper.on('data', (part: Uint8Array) => parts.push(part));
  const done = new Promise<void>((resolve) => paper.on('end', resolve));
  takeHands(paper);
  paper.fillColor(iron);
  writeHead(paper, gallery);
  write(paper);
  numberPages(paper);
  paper.end();
  await done;
  return new Uint8Array(Buffer.concat(parts));
}

/** Ink on paper, and the quiet ink for what stands beside. */
export const iron = '#33281f';
/** See {@link iron}. */
export const ash = '#6a5f56';

/** Registers our hands on a document: serif, italic, sans and bold. */
export function takeHands(paper: Paper): void {
  for (const [name, file] of Object.entries(faces)) paper.registerFont(name, faceOf(file));
}

function faceOf(file: string): Buffer {
  return readFileSync(join(process.cwd(), 'app', 'fonts', 'paper', `${file}.ttf`));
}

/** The size of the page that is being written, and its margin at the left, in points. */
export function sizeOf(paper: Paper): PageSize {
  const { width, height, margins } = paper.page;
  return { width, height, margin: margins.left };
}

function writeHead(paper: Paper, gallery: PaperGallery): void {
  paper.font('serif').fontSize(21).text(gallery.name, { lineGap: 0 });
  if (gallery.tagline) paper.font('italic').fontSize(10).fillColor(ash).text(gallery.tagline);
  paper.font('sans').fontSize(8.5).fillColor(ash);
  for (const line of addressLines(gallery)) paper.text(line);
  paper.fillColor(iron).moveDown(1);
}

/** The one rule line of a paper, from margin to margin. */
export function ruleLine(paper: Paper): void {
  const { width, margin } = sizeOf(paper);
  const y = paper.y + 2;
  paper
    .moveTo(margin, y)
    .lineTo(width - margin, y)
    .lineWidth(0.6)
    .strokeColor(iron)
    .stroke();
  paper.y = y + 8;
}

/**
 * Words at the left, in the hand chosen before, and a figure ranged right on the same line; long
 * words run on under themselves. No figure leaves the whole line to the words.
 */
export function wordsAndFigure(paper: Paper, words: string, figure: string): void {
  const { width, margin } = sizeOf(paper);
  const top = paper.y;
  const right = width - margin;
  const figureWidth = figure === '' ? 0 : paper.widthOfString(figure) + 14;
  if (figure !== '') paper.text(figure, margin, top, { width: right - margin, align: 'right' });
  paper.text(words, margin, top, { width: right - margin - figureWidth });
}

/** Begins a new page when fewer points than that are left on this one. */
export function keepTogether(paper: Paper, points: number): void {
  const { height, margin } = sizeOf(paper);
  if (paper.y + points > height - margin - 14) paper.addPage();
}

function numberPages(paper: Paper): void {
  const { start, count } = paper.bufferedPageRange();
  if (count < 2) return;
  for (let page = start; page < start + count; page += 1) {
    paper.switchToPage(page);
    const { width, height, margin } = sizeOf(paper);
    paper.page.margins.bottom = 0;
    paper
      .font('sans')
      .fontSize(8)
      .fillColor(ash)
      .text(`${page + 1} of ${count}`, margin, height - margin + 6, {
        width: width - 2 * margin,
        align: 'right',
        lineBreak: false,
      });
  }
}
