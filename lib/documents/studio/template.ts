import 'server-only';
import PDFDocument from 'pdfkit';
import type { Template, TemplateSheet } from '@/lib/clay/rules/template';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import { onlyKnownSigns } from '../labels/signs';
import { ash, iron, takeHands, type Paper } from '../paper';
import { drawPartLines } from './part-lines';
import { drawKey } from './template-key';
import { drawRulers, pointsPerUm, rulersWidth } from './ruler';
import { firedWords, placeWords, wetWords, type TemplateTold } from './template-words';

/** The arm of a register cross, and how far from a sheet’s edge its neighbour is named, in points. */
const crossArm = 11;
const neighbourIn = 12;

/**
 * A template as a PDF at true scale, in wet size: a page that shows how the sheets lie, then each
 * sheet with its part of the drawing, crosses to lay it by, its letter, and rulers to check the
 * printer with.
 *
 * @param shapes the numbered parts of a relief, drawn in place of rows and columns
 * @returns real text in our type; lines as shapes, a point for each 1/72 of an inch
 */
export async function templatePdf(
  template: Template,
  told: TemplateTold,
  shapes: readonly Shape[] = [],
): Promise<Uint8Array<ArrayBuffer>> {
  const size: [number, number] = [
    template.pageWidthUm * pointsPerUm,
    template.pageHeightUm * pointsPerUm,
  ];
  const paper = new PDFDocument({
    ...{ size, margin: 0, autoFirstPage: false, lang: 'en-US', displayTitle: true },
    info: { Title: `Template: ${told.title}`, Author: told.gallery, Creator: told.gallery },
  });
  const parts: Uint8Array[] = [];
  paper.on('data', (part: Uint8Array) => parts.push(part));
  const done = new Promise<void>((resolve) => paper.on('end', resolve));
  takeHands(paper);
  paper.addPage();
  const known = { ...told, title: onlyKnownSigns(paper, told.title, 'italic') || 'Template' };
  drawKey(paper, template, known, shapes);
  for (const sheet of template.sheets) {
    paper.addPage();
    drawSheet(paper, { template, sheet, shapes, told: known });
  }
  paper.end();
  await done;
  return new Uint8Array(Buffer.concat(parts));
}

type SheetToDraw = {
  template: Template;
  sheet: TemplateSheet;
  shapes: readonly Shape[];
  told: TemplateTold;
};

function drawSheet(paper: Paper, on: SheetToDraw): void {
  const { template, sheet, shapes } = on;
  const { window } = template;
  const shown = {
    ...{ x: window.xUm * pointsPerUm, y: window.yUm * pointsPerUm },
    ...{ width: window.widthUm * pointsPerUm, height: window.heightUm * pointsPerUm },
  };
  paper.save();
  paper.rect(shown.x, shown.y, shown.width, shown.height).clip();
  paper.translate(shown.x - sheet.xUm * pointsPerUm, shown.y - sheet.yUm * pointsPerUm);
  drawOutline(paper, template);
  drawPartLines(paper, template, { shapes, scale: pointsPerUm });
  drawCrosses(paper, template);
  paper.restore();
  if (template.sheets.length > 1) {
    paper.rect(shown.x, shown.y, shown.width, shown.height);
    paper.lineWidth(0.4).dash(2, { space: 3 }).strokeColor(ash).stroke().undash();
  }
  nameNeighbours(paper, sheet, shown);
  const foot = shown.y + shown.height + 20;
  drawRulers(paper, { x: shown.x, y: foot });
  writeFoot(paper, on, { x: shown.x + rulersWidth + 16, y: foot - 14 });
}

function drawOutline(paper: Paper, template: Template): void {
  const width = template.wetWidthUm * pointsPerUm;
  const height = template.wetHeightUm * pointsPerUm;
  paper.lineWidth(0.8).strokeColor(iron).rect(0, 0, width, height).stroke();
  paper.lineWidth(0.5);
  for (const xUm of template.cutsAtXUm) {
    paper
      .moveTo(xUm * pointsPerUm, 0)
      .lineTo(xUm * pointsPerUm, height)
      .stroke();
  }
  for (const yUm of template.cutsAtYUm) {
    paper
      .moveTo(0, yUm * pointsPerUm)
      .lineTo(width, yUm * pointsPerUm)
      .stroke();
  }
  numberParts(paper, template);
}

/** Every part carries its number, row by row, in its upper left corner. */
function numberParts(paper: Paper, { cutsAtXUm, cutsAtYUm }: Template): void {
  if (cutsAtXUm.length + cutsAtYUm.length === 0) return;
  paper.font('sans').fontSize(9).fillColor(ash);
  let number = 0;
  for (const top of [0, ...cutsAtYUm]) {
    for (const left of [0, ...cutsAtXUm]) {
      number += 1;
      const [x, y] = [left * pointsPerUm + 5, top * pointsPerUm + 4];
      paper.text(String(number), x, y, { lineBreak: false });
    }
  }
}

function drawCrosses(paper: Paper, { registerMarks }: Template): void {
  paper.lineWidth(0.4).strokeColor(iron);
  for (const { xUm, yUm } of registerMarks) {
    const [x, y] = [xUm * pointsPerUm, yUm * pointsPerUm];
    paper
      .moveTo(x - crossArm, y)
      .lineTo(x + crossArm, y)
      .moveTo(x, y - crossArm)
      .lineTo(x, y + crossArm)
      .circle(x, y, crossArm / 2)
      .stroke();
  }
}

type Shown = { x: number; y: number; width: number; height: number };

function nameNeighbours(paper: Paper, sheet: TemplateSheet, shown: Shown): void {
  const { leftLetter, rightLetter, aboveLetter, belowLetter } = sheet;
  const middle = { x: shown.x + shown.width / 2, y: shown.y + shown.height / 2 };
  const names: [string | null, number, number][] = [
    [leftLetter, shown.x + neighbourIn, middle.y],
    [rightLetter, shown.x + shown.width - neighbourIn, middle.y],
    [aboveLetter, middle.x, shown.y + neighbourIn],
    [belowLetter, middle.x, shown.y + shown.height - neighbourIn],
  ];
  paper.font('bold').fontSize(11);
  for (const [letter, x, y] of names) {
    if (letter === null) continue;
    const half = paper.widthOfString(letter) / 2;
    paper.rect(x - half - 2, y - 8, 2 * half + 4, 14).fill('white');
    paper.fillColor(ash).text(letter, x - half, y - 7, { lineBreak: false });
  }
}

function writeFoot(paper: Paper, on: SheetToDraw, corner: { x: number; y: number }): void {
  const { template, sheet, told } = on;
  const { x, y } = corner;
  paper.font('serif').fontSize(30).fillColor(iron);
  paper.text(sheet.letter, x, y - 6, { lineBreak: false });
  const right = x + paper.widthOfString(sheet.letter) + 12;
  const width = (template.window.xUm + template.window.widthUm) * pointsPerUm - right;
  const line = { width, height: 12, ellipsis: true } as const;
  paper.font('italic').fontSize(10).text(told.title, right, y, line);
  paper
    .font('bold')
    .fontSize(9)
    .text(wetWords(template), right, y + 14, line);
  paper.font('sans').fontSize(8).fillColor(ash);
  paper.text(firedWords(template, told), right, y + 27, line);
  paper.text(placeWords(template, sheet), right, y + 38, line);
}
