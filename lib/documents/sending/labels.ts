import 'server-only';
import PDFDocument from 'pdfkit';
import { handsFor, handsOnLabel } from '@/lib/freight/rules/hands';
import type { Gallery } from '@/lib/platform/settings';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import type { BoxKept } from '@/lib/sending/reads/stored';
import { weightOf } from '@/lib/sending/rules/reckoning';
import { weighedIn } from '@/lib/sending/rules/typed/line';
import { formatWeight } from '@/lib/units/rules';
import { onlyKnownSigns } from '../labels/signs';
import { ash, fullPageOf, iron, takeHands, type Paper } from '../paper';
import { addressLines } from '../rules';
import { numbersWords } from './head';

type Page = { width: number; height: number };
const margin = 26;
/** The foot of a label, with what everybody has to read. */
const footHeight = 124;
const rightWide = 170;

/**
 * The labels of boxes and crates as a PDF, half a page each on its side: from and to, box n of N,
 * gross weight, this face up, fragile, how many people. The value stands nowhere.
 *
 * @returns one page for each box, in their order
 * @source common practice: a label on every side
 */
export async function crateLabelsPdf(
  shipment: ShipmentTold,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height } = fullPageOf(gallery);
  const page = { width, height: height / 2 };
  const paper = new PDFDocument({
    ...{ size: [page.width, page.height], margin: 0, autoFirstPage: false },
    ...{ lang: 'en-US', displayTitle: true },
    info: {
      ...{ Title: `Labels of shipment ${shipment.number}` },
      ...{ Author: gallery.name, Creator: gallery.name },
    },
  });
  const parts: Uint8Array[] = [];
  paper.on('data', (part: Uint8Array) => parts.push(part));
  const done = new Promise<void>((resolve) => paper.on('end', resolve));
  takeHands(paper);
  for (const box of shipment.boxes) {
    paper.addPage();
    writeFrom(paper, gallery, page);
    writeTo(paper, shipment, page);
    writeRight(paper, { shipment, box, unit: gallery.lengthUnit, page });
    writeFoot(paper, box, page);
  }
  if (shipment.boxes.length === 0) paper.addPage();
  paper.end();
  await done;
  return new Uint8Array(Buffer.concat(parts));
}

function writeFrom(paper: Paper, gallery: Gallery, { width }: Page): void {
  const wide = width - 2 * margin - rightWide - 16;
  const from = [gallery.name, ...addressLines(gallery)]
    .map((line) => onlyKnownSigns(paper, line, 'sans'))
    .join('\n');
  paper.font('bold').fontSize(8).fillColor(ash).text('FROM', margin, margin);
  paper.fillColor(iron);
  const y = margin + 11;
  fit(paper, from, { x: margin, y, width: wide, height: 54, face: 'sans', most: 10 });
}

function writeTo(paper: Paper, shipment: ShipmentTold, { width, height }: Page): void {
  const { toName, toAddress, toPhone, how } = shipment;
  const wide = width - 2 * margin - rightWide - 16;
  paper.font('bold').fontSize(8).fillColor(ash);
  paper.text(how === 'fetched' ? 'FETCHED BY' : 'TO', margin, margin + 70);
  paper.fillColor(iron);
  const top = margin + 81;
  const name = onlyKnownSigns(paper, toName, 'bold');
  const nameHigh = fit(paper, name, {
    x: margin,
    y: top,
    width: wide,
    height: 62,
    face: 'bold',
    most: 26,
  });
  const lines = [...toAddress.split(/\r?\n/), toPhone]
    .map((line) => onlyKnownSigns(paper, line, 'sans'))
    .filter((line) => line !== '');
  const y = top + nameHigh + 4;
  const room = height - footHeight - margin - y;
  fit(paper, lines.join('\n'), { x: margin, y, width: wide, height: room, face: 'sans', most: 19 });
}

type Fit = {
  x: number;
  y: number;
  width: number;
  height: number;
  face: 'bold' | 'sans';
  most: number;
  align?: 'center';
};

/** Writes words as large as they fit, from `most` points down to 7. @returns how high they stand */
function fit(paper: Paper, words: string, box: Fit): number {
  const { x, y, width, height, face, most } = box;
  paper.font(face);
  let size = most;
  while (size > 7 && paper.fontSize(size).heightOfString(words, { width }) > height) size -= 0.5;
  const align = box.align ?? 'left';
  paper.fontSize(size).text(words, x, y, { width, height, align, ellipsis: true });
  return Math.min(height, paper.heightOfString(words, { width }));
}

type Right = {
  shipment: ShipmentTold;
  box: BoxKept;
  unit: Gallery['lengthUnit'];
  page: Page;
};

function writeRight(paper: Paper, { shipment, box, unit, page }: Right): void {
  const x = page.width - margin - rightWide;
  const options = { width: rightWide, align: 'right' } as const;
  paper.font('bold').fontSize(46).fillColor(iron);
  paper.text(`${box.position} of ${shipment.boxes.length}`, x, margin - 8, options);
  paper.fontSize(26).text(formatWeight(weightOf(box), weighedIn(unit)), x, margin + 52, options);
  paper.font('sans').fontSize(9.5).fillColor(ash);
  paper.text(box.scaleG === null ? 'gross, about' : 'gross, by the scale', x, paper.y - 2, options);
  const parts = box.contents.flatMap(({ partNumber }) => partNumber ?? []);
  const { commission, sale } = shipment.forWhat;
  const words = [
    `Shipment ${shipment.number}`,
    commission ? `commission ${commission.number}` : '',
    sale ? `receipt ${sale.number}` : '',
    parts.length === 0 ? '' : `parts ${numbersWords(parts)}`,
    shipment.tracking === '' ? '' : `carrier’s number ${shipment.tracking}`,
  ];
  paper.moveDown(0.6).fillColor(iron);
  paper.text(words.filter((each) => each !== '').join('\n'), x, paper.y, {
    ...options,
    height: page.height - footHeight - margin - paper.y,
    ellipsis: true,
  });
}

function writeFoot(paper: Paper, box: BoxKept, { width, height }: Page): void {
  const top = height - footHeight;
  paper
    .moveTo(margin, top)
    .lineTo(width - margin, top)
    .lineWidth(1)
    .strokeColor(iron)
    .stroke();
  const arrowWide = 70;
  arrow(paper, margin + 8, top + 16);
  arrow(paper, width - margin - 8 - 46, top + 16);
  const x = margin + arrowWide;
  const options = { width: width - 2 * x, align: 'center' } as const;
  const hands = handsOnLabel[handsFor(weightOf(box))];
  paper.font('bold').fontSize(25).fillColor(iron);
  paper.text('FRAGILE · CERAMIC', x, top + 10, options);
  paper.fontSize(17).text('THIS FACE UP', x, top + 44, options);
  const last = [
    hands ?? '',
    box.kind === 'crate' ? 'OPEN THE FACE WITH THE MARKED SCREWS' : 'NO KNIFE: OPEN THE TAPE',
  ];
  const words = last.filter((each) => each !== '').join(' · ');
  fit(paper, words, {
    ...{ x, y: top + 70, width: options.width, height: 26, face: 'bold', most: 13 },
    align: 'center',
  });
}

/** An arrow that points up, 46 points wide. */
function arrow(paper: Paper, x: number, y: number): void {
  const [left, middle, right] = [x, x + 23, x + 46];
  paper
    .moveTo(middle, y)
    .lineTo(right, y + 32)
    .lineTo(right - 14, y + 32);
  paper
    .lineTo(right - 14, y + 66)
    .lineTo(left + 14, y + 66)
    .lineTo(left + 14, y + 32);
  paper
    .lineTo(left, y + 32)
    .closePath()
    .fillColor(iron)
    .fill();
  paper.rect(left, y + 72, 46, 5).fill();
}
