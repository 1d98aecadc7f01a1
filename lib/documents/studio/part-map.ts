import 'server-only';
import type { Gallery } from '@/lib/platform/settings';
import type { PartMapShown } from '@/lib/studio/reads/parts/map';
import { labelSpot } from '@/lib/studio/rules/parts/label';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import { areaWords, partSize } from '@/lib/studio/rules/parts/sizes';
import { formatSize } from '@/lib/units/rules';
import { onlyKnownSigns } from '../labels/signs';
import { ash, fullPageOf, iron, makePaper, ruleLine, sizeOf, type Paper } from '../paper';

/** Room at the foot of the page of the drawing, in points. */
const footHeight = 30;
/** The height of a row of the list, in points. */
const rowHeight = 14;

/**
 * The numbered drawing as a PDF: whole on one page, each part with its number, then the list of
 * the parts with their sizes and colour areas. On its side where the relief is wider than high.
 *
 * @returns real text in our type; lines as shapes
 */
export async function partMapPdf(
  map: PartMapShown,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const page = fullPageOf(gallery);
  const isWide = map.size.widthUm > map.size.heightUm;
  const size = isWide ? { ...page, width: page.height, height: page.width } : page;
  const write = (paper: Paper) => {
    writeTitle(paper, map, gallery);
    drawWhole(paper, map);
    paper.addPage();
    writeList(paper, map, gallery);
  };
  return makePaper(`Numbered drawing: ${map.title}`, gallery, write, size);
}

function writeTitle(paper: Paper, map: PartMapShown, gallery: Gallery): void {
  const { lengthUnit } = gallery;
  const known = onlyKnownSigns(paper, map.title, 'italic') || 'Numbered drawing';
  paper.font('italic').fontSize(18).fillColor(iron).text(known);
  const commission = map.commissionNumber === null ? '' : `, commission ${map.commissionNumber}`;
  const parts = `${map.numbers.length} numbered parts`;
  const line = `Job ${map.jobNumber}${commission}: ${parts}, fired ${formatSize(map.size, lengthUnit)}`;
  paper.font('sans').fontSize(9.5).fillColor(ash).text(line).moveDown(0.6);
}

function drawWhole(paper: Paper, { shapes, size }: PartMapShown): void {
  const { width, height, margin } = sizeOf(paper);
  const aspect = size.heightUm / size.widthUm;
  const room = { width: width - 2 * margin, height: height - margin - footHeight - paper.y };
  const wide = Math.min(room.width, room.height / aspect);
  const left = margin + (room.width - wide) / 2;
  const top = paper.y;
  paper.save();
  paper.translate(left, top);
  paper
    .lineWidth(1.2)
    .strokeColor(iron)
    .rect(0, 0, wide, wide * aspect)
    .stroke();
  for (const shape of shapes) drawPart(paper, shape, wide / 1000, aspect);
  paper.restore();
}

function drawPart(paper: Paper, shape: Shape, scale: number, aspect: number): void {
  const { outline, number, hasSpare } = shape;
  const corners = outline.map(([x, y]): [number, number] => [x * scale, y * aspect * scale]);
  paper.lineWidth(0.8).strokeColor(iron);
  paper.polygon(...corners).stroke();
  const { at, room } = labelSpot(outline, aspect);
  const size = Math.min(16, Math.max(5, room * scale * 0.9));
  const words = hasSpare ? `${number}+` : String(number);
  paper.font('bold').fontSize(size).fillColor(iron);
  const x = at[0] * scale - paper.widthOfString(words) / 2;
  paper.text(words, x, at[1] * aspect * scale - size * 0.6, { lineBreak: false });
}

function writeList(paper: Paper, map: PartMapShown, gallery: Gallery): void {
  const { height, margin, width } = sizeOf(paper);
  const columns = [0, 0.08, 0.36, 0.58, 0.8].map((share) => margin + share * (width - 2 * margin));
  const heads = ['No.', 'Colour area', 'Fired', 'Wet', 'Face'];
  writeRow(paper, columns, heads, 'bold');
  ruleLine(paper);
  for (const shape of map.shapes) {
    if (paper.y + rowHeight > height - margin - 14) {
      paper.addPage();
      writeRow(paper, columns, heads, 'bold');
      ruleLine(paper);
    }
    writeRow(paper, columns, cellsOf(shape, map, gallery), 'sans');
  }
  const hasSpares = map.shapes.some((shape) => shape.hasSpare);
  paper.font('sans').fontSize(8.5).fillColor(ash);
  const spares = hasSpares ? 'Of a number with + two are made from the start. ' : '';
  const back = 'Write the number on the back of each part while the clay is soft.';
  paper.text(`${spares}${back}`, margin, paper.y + 8, { width: width - 2 * margin });
}

function cellsOf(shape: Shape, map: PartMapShown, { lengthUnit }: Gallery): string[] {
  const size = partSize(shape.outline, map.size, map.shrinkagePercent);
  return [
    `${shape.number}${shape.hasSpare ? '+' : ''}`,
    shape.note ? `${shape.area} (${shape.note})` : shape.area,
    formatSize(size, lengthUnit),
    size.wet ? formatSize(size.wet, lengthUnit) : 'not known',
    areaWords(size.areaMm2, lengthUnit),
  ];
}

function writeRow(
  paper: Paper,
  columns: readonly number[],
  cells: readonly string[],
  hand: 'sans' | 'bold',
): void {
  const top = paper.y;
  const { width: pageWidth, margin } = sizeOf(paper);
  for (const [at, cell] of cells.entries()) {
    const x = columns[at] ?? margin;
    const width = (columns[at + 1] ?? pageWidth - margin) - x - 6;
    paper.font(hand).fontSize(9).fillColor(iron);
    const known = onlyKnownSigns(paper, cell, hand);
    paper.text(known, x, top, { width, height: rowHeight, ellipsis: true, lineBreak: false });
  }
  paper.y = top + rowHeight;
}
