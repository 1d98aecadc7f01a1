import 'server-only';
import type { Template } from '@/lib/clay/rules/template';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import { ash, iron, type Paper } from '../paper';
import { drawPartLines } from './part-lines';
import { drawRulers, pointsPerUm } from './ruler';
import { measureLines, stepsToLay, wetWords, type TemplateTold } from './template-words';

const margin = 40;
/** How wide the names of measures stand. */
const nameWidth = 120;
/** Where parts meet, so light that letters are read over it. */
const faint = '#c4b9ac';
/** What the rulers at the foot take. */
const footHeight = 70;

/** The first page of a template: what it is, its measures, how it is printed, how the sheets lie. */
export function drawKey(
  paper: Paper,
  template: Template,
  told: TemplateTold,
  shapes: readonly Shape[],
): void {
  const { width, height } = paper.page;
  const inner = width - 2 * margin;
  paper.font('serif').fontSize(13).fillColor(iron).text(told.gallery, margin, margin);
  paper.font('italic').fontSize(20).text(told.title, { width: inner, height: 52, ellipsis: true });
  paper
    .font('bold')
    .fontSize(11)
    .text(`Template, ${wetWords(template)}`)
    .moveDown(0.6);
  for (const [name, words] of measureLines(template, told)) {
    const top = paper.y;
    paper.font('sans').fontSize(9).fillColor(ash).text(name, margin, top, { width: nameWidth });
    paper
      .fillColor(iron)
      .fontSize(10)
      .text(words, margin + nameWidth, top - 1);
  }
  paper.moveDown(0.6);
  for (const [at, step] of stepsToLay(template).entries()) {
    paper
      .font('sans')
      .fontSize(9.5)
      .text(`${at + 1}. ${step}`, margin, paper.y, { width: inner });
  }
  const top = paper.y + 14;
  const box = { x: margin, y: top, width: inner, height: height - footHeight - margin - top };
  drawSheetsLying(paper, { template, shapes }, box);
  drawRulers(paper, { x: margin, y: height - footHeight });
}

type Box = { x: number; y: number; width: number; height: number };

/** The outline made small, and over it each sheet with its letter. */
function drawSheetsLying(
  paper: Paper,
  { template, shapes }: { template: Template; shapes: readonly Shape[] },
  box: Box,
): void {
  const { sheets, window } = template;
  const [first, last] = [sheets[0], sheets.at(-1)];
  if (!first || !last) return;
  const wholeWidth = last.xUm + window.widthUm - first.xUm;
  const wholeHeight = last.yUm + window.heightUm - first.yUm;
  const scale = Math.min(box.width / wholeWidth, box.height / wholeHeight, pointsPerUm / 2);
  const x = (um: number) => box.x + (um - first.xUm) * scale;
  const y = (um: number) => box.y + (um - first.yUm) * scale;
  const outline = [template.wetWidthUm * scale, template.wetHeightUm * scale] as const;
  paper.lineWidth(1.2).strokeColor(iron).fillColor('#f1ece4');
  paper.rect(x(0), y(0), ...outline).fillAndStroke();
  paper.lineWidth(0.4).strokeColor(faint);
  for (const cut of template.cutsAtXUm) {
    paper.moveTo(x(cut), y(0)).lineTo(x(cut), y(template.wetHeightUm)).stroke();
  }
  for (const cut of template.cutsAtYUm) {
    paper.moveTo(x(0), y(cut)).lineTo(x(template.wetWidthUm), y(cut)).stroke();
  }
  paper.save().translate(x(0), y(0));
  drawPartLines(paper, template, { shapes, scale });
  paper.restore();
  const [sheetWidth, sheetHeight] = [window.widthUm * scale, window.heightUm * scale];
  const letterSize = Math.max(6, Math.min(26, sheetWidth / 3, sheetHeight / 3));
  paper.lineWidth(0.6).strokeColor(ash).dash(3, { space: 2 });
  for (const sheet of sheets)
    paper.rect(x(sheet.xUm), y(sheet.yUm), sheetWidth, sheetHeight).stroke();
  paper.undash().font('serif').fontSize(letterSize).fillColor(iron);
  for (const sheet of sheets) {
    const across = x(sheet.xUm) + (sheetWidth - paper.widthOfString(sheet.letter)) / 2;
    const down = y(sheet.yUm) + sheetHeight / 2 - letterSize * 0.65;
    paper.text(sheet.letter, across, down, { lineBreak: false });
  }
}
