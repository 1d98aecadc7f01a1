import 'server-only';
import PDFDocument from 'pdfkit';
import { foodLetterPt } from '../rules/labels/cautions';
import { labelSheet, labelSpot, type LabelSheet, type LabelSheetKey } from '../rules/labels/sheets';
import {
  carriesCode,
  foodStatementFor,
  labelBlocks,
  labelCode,
  type LabelBlock,
  type LabelGallery,
  type LabelKind,
  type LabelPiece,
} from '../rules/labels/words';
import { ash, iron, takeHands, type Paper } from '../paper';
import { drawBars, drawQr } from './codes';
import { fitBlocks, type Box } from './fit';
import { onlyKnownSigns } from './signs';

/** Which codes a label carries. */
export const labelCodes = ['qr', 'bars', 'both', 'none'] as const;

/** How labels are printed. */
export type LabelPrint = {
  kind: LabelKind;
  sheet: LabelSheetKey;
  codes: (typeof labelCodes)[number];
  /** On which label of the first sheet it begins, from 1. */
  firstAt: number;
};

/** White inside a label's edge, in points. */
const inset = 8;
/** From this height on the food statement stands on the label itself; else on one of its own. */
const roomyHeight = 130;
/** Capitals of our bold hand are so high, in parts of its size; a little less than measured. */
const capitalHeight = 0.65;
const foodSize = Math.ceil((foodLetterPt / capitalHeight) * 10) / 10;

/**
 * Labels as a PDF on sheets of labels: one for each piece given, in their order. Small labels of
 * ware that is not for food are followed by one with the statement alone.
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
  const isRoomy = sheet.height >= roomyHeight;
  return pieces.flatMap((piece) => {
    const food = foodStatementFor(piece);
    const label: WriteLabel = (paper, corner) => {
      writeLabel(paper, corner, { piece, gallery, print, food: isRoomy ? food : null });
    };
    if (food === null || isRoomy) return [label];
    const statement: WriteLabel = (paper, corner) => {
      writeStatement(paper, corner, { food, sku: piece.sku, box: innerOf(sheet) });
    };
    return [label, statement];
  });
}

/** How many labels a piece takes: two where its food statement stands on one of its own. */
export function labelsTaken(piece: LabelPiece, sheet: LabelSheetKey): number {
  const isApart = foodStatementFor(piece) !== null && labelSheet(sheet).height < roomyHeight;
  return isApart ? 2 : 1;
}

function innerOf({ width, height }: LabelSheet): Box {
  return { width: width - 2 * inset, height: height - 2 * inset };
}

type Label = { piece: LabelPiece; gallery: LabelGallery; print: LabelPrint; food: string | null };

function writeLabel(paper: Paper, corner: Corner, label: Label): void {
  const { piece, gallery, print, food } = label;
  const inner = innerOf(labelSheet(print.sheet));
  const codes = carriesCode(print.kind) ? print.codes : 'none';
  const code = labelCode(piece);
  const hasBars = codes === 'bars' || codes === 'both';
  const hasQr = codes === 'qr' || codes === 'both';
  const barsHeight = hasBars ? Math.min(26, inner.height * 0.3) : 0;
  const foodHeight = food === null ? 0 : 2 * foodSize * 1.16 + 4;
  const words: Box = { ...inner, height: inner.height - barsHeight - foodHeight };
  if (hasQr) {
    const side = Math.min(words.height, inner.width * 0.36, 92);
    drawQr(paper, code, { x: corner.x + inner.width - side, y: corner.y, side });
    words.width -= side + 4;
  }
  const known = { ...piece, title: onlyKnownSigns(paper, piece.title, 'italic') || piece.sku };
  writeBlocks(paper, labelBlocks(known, print.kind, gallery), { ...corner, ...words });
  if (food !== null) {
    const box = { ...inner, height: foodHeight, x: corner.x, y: corner.y + words.height };
    writeBlocks(paper, foodBlocks(food), box);
  }
  if (hasBars) {
    const y = corner.y + inner.height - barsHeight + 2;
    drawBars(paper, code, { x: corner.x, y, width: inner.width, height: barsHeight - 2 });
  }
}

type Statement = { food: string; sku: string; box: Box };

function writeStatement(paper: Paper, corner: Corner, { food, sku, box }: Statement): void {
  const blocks = [...foodBlocks(food), quietLine(sku)];
  writeBlocks(paper, blocks, { ...corner, ...box });
}

/** The statement is never set smaller than the rule allows. */
function foodBlocks(text: string): LabelBlock[] {
  const size = { size: foodSize, least: foodSize, lines: 3 };
  return [{ text, face: 'bold', ...size, isKept: true, isQuiet: false }];
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
