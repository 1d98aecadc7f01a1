import 'server-only';
import PDFDocument from 'pdfkit';
import { foodLetterPt } from '../rules/labels/cautions';
import type { LabelPrint } from '../rules/labels/printing';
import { labelSheet, labelSpot, type LabelSheet } from '../rules/labels/sheets';
import { hasRoomForCaution } from '../rules/labels/taken';
import {
  carriesCode,
  cautionFor,
  labelBlocks,
  labelCode,
  type LabelBlock,
  type LabelCaution,
  type LabelGallery,
  type LabelPiece,
} from '../rules/labels/words';
import { ash, iron, takeHands, type Paper } from '../paper';
import { drawBars, drawQr } from './codes';
import { fitBlocks, type Box } from './fit';
import { onlyKnownSigns } from './signs';

/** White inside a label's edge, in points. */
const inset = 8;
/** Capitals of our bold hand are so high, in parts of its size; a little less than measured. */
const capitalHeight = 0.65;
const foodSize = Math.ceil((foodLetterPt / capitalHeight) * 10) / 10;

/**
 * Labels as a PDF on sheets of labels: one for each piece given, in their order. Where a caution
 * goes with a piece, a small label is followed by one with the caution alone.
 *
 * @returns real text in our type, codes as shapes; nothing stands outside its label
 */
export async function labelsPdf(
  pieces: readonly LabelPiece[],
  gallery: LabelGallery,
  print: LabelPrint,
): Promise<Uint8Array<ArrayBuffer>> {
  const sheet = labelSheet(print.sheet);
  const paper = new PDFDocument({
    ...{ size: [sheet.pageWidth, sheet.pageHeight], margin: 0, autoFirstPage: false },
    ...{ lang: 'en-US', displayTitle: true },
    info: { Title: 'Labels', Author: gallery.name, Creator: gallery.name },
  });
  const parts: Uint8Array[] = [];
  paper.on('data', (part: Uint8Array) => parts.push(part));
  const done = new Promise<void>((resolve) => paper.on('end', resolve));
  takeHands(paper);
  let pages = 0;
  for (const [at, write] of labelsOf(pieces, gallery, print).entries()) {
    const { page, x, y } = labelSpot(sheet, at, print.firstAt);
    for (; pages <= page; pages += 1) paper.addPage();
    write(paper, { x: x + inset, y: y + inset });
  }
  if (pages === 0) paper.addPage();
  paper.end();
  await done;
  return new Uint8Array(Buffer.concat(parts));
}

type Corner = { x: number; y: number };
type WriteLabel = (paper: Paper, corner: Corner) => void;

function labelsOf(
  pieces: readonly LabelPiece[],
  gallery: LabelGallery,
  print: LabelPrint,
): WriteLabel[] {
  const sheet = labelSheet(print.sheet);
  const isRoomy = hasRoomForCaution(print.sheet);
  return pieces.flatMap((piece) => {
    const caution = cautionFor(piece);
    const label: WriteLabel = (paper, corner) => {
      writeLabel(paper, corner, { piece, gallery, print, caution: isRoomy ? caution : null });
    };
    if (caution === null || isRoomy) return [label];
    const apart: WriteLabel = (paper, corner) => {
      const blocks = [...cautionBlocks(caution), quietLine(piece.sku)];
      writeBlocks(paper, blocks, { ...corner, ...innerOf(sheet) });
    };
    return [label, apart];
  });
}

function innerOf({ width, height }: LabelSheet): Box {
  return { width: width - 2 * inset, height: height - 2 * inset };
}

type Label = {
  piece: LabelPiece;
  gallery: LabelGallery;
  print: LabelPrint;
  caution: LabelCaution | null;
};

function writeLabel(paper: Paper, corner: Corner, label: Label): void {
  const { piece, gallery, print, caution } = label;
  const inner = innerOf(labelSheet(print.sheet));
  const codes = carriesCode(print.kind) ? print.codes : 'none';
  const code = labelCode(piece);
  const hasBars = codes === 'bars' || codes === 'both';
  const hasQr = codes === 'qr' || codes === 'both';
  const barsHeight = hasBars ? Math.min(26, inner.height * 0.3) : 0;
  const cautionHeight = caution === null ? 0 : 2 * foodSize * 1.16 + 4;
  const words: Box = { ...inner, height: inner.height - barsHeight - cautionHeight };
  if (hasQr) {
    const side = Math.min(words.height, inner.width * 0.36, 92);
    drawQr(paper, code, { x: corner.x + inner.width - side, y: corner.y, side });
    words.width -= side + 4;
  }
  const known = { ...piece, title: onlyKnownSigns(paper, piece.title, 'italic') || piece.sku };
  writeBlocks(paper, labelBlocks(known, print.kind, gallery), { ...corner, ...words });
  if (caution !== null) {
    const box = { ...inner, height: cautionHeight, x: corner.x, y: corner.y + words.height };
    writeBlocks(paper, cautionBlocks(caution), box);
  }
  if (hasBars) {
    const y = corner.y + inner.height - barsHeight + 2;
    drawBars(paper, code, { x: corner.x, y, width: inner.width, height: barsHeight - 2 });
  }
}

/** The food statement is never set smaller than the rule allows. */
function cautionBlocks({ about, text }: LabelCaution): LabelBlock[] {
  const kept = { text, isKept: true, isQuiet: false } as const;
  if (about === 'food') {
    return [{ ...kept, face: 'bold', size: foodSize, least: foodSize, lines: 3 }];
  }
  return [{ ...kept, face: 'sans', size: 9, least: 7, lines: 4 }];
}

function quietLine(text: string): LabelBlock {
  return { text, face: 'sans', size: 8, least: 7, lines: 1, isKept: false, isQuiet: true };
}

function writeBlocks(paper: Paper, blocks: readonly LabelBlock[], box: Corner & Box): void {
  const known = blocks.map((each) => ({
    ...each,
    text: onlyKnownSigns(paper, each.text, each.face),
  }));
  for (const line of fitBlocks(paper, known, box)) {
    paper
      .font(line.face)
      .fontSize(line.size)
      .fillColor(line.isQuiet ? ash : iron);
    paper.text(line.text, box.x, box.y + line.y, { lineBreak: false });
  }
}
