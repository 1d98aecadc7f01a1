import 'server-only';
import type { Day } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import type { PlanTold } from '@/lib/installation/rules/plan/told';
import { formatLength, formatWeight } from '@/lib/units/rules';
import { decideOnSite, type FixingPlan } from '@/lib/walls/rules';
import { drawWall, type ToDraw } from '@/lib/walls/rules/drawing/drawing';
import { cleatWords, type Cleat } from '@/lib/walls/rules/plan/asked';
import { writeHeading, writePaperHead, writeWords } from '../commissions/page';
import { onlyKnownSigns } from '../labels/signs';
import {
  ash,
  fullPageOf,
  iron,
  keepTogether,
  makePaper,
  sizeOf,
  wordsAndFigure,
  type Paper,
} from '../paper';
import { drawWallOn } from './plan-drawing';

/** Everything that the installer’s sheet says. */
export type PlanPaper = {
  readonly work: string;
  readonly collector: string;
  readonly commissionNumber: number;
  readonly on: Day;
  readonly plan: FixingPlan;
  readonly cleat: Cleat;
  readonly told: Pick<PlanTold, 'fixings' | 'hands' | 'advice' | 'steps'>;
  readonly wall: ToDraw['wall'];
  /** What the wall is made of, and how that was proved. */
  readonly wallWords: string;
  /** What it weighs, and from what that is known. */
  readonly weightWords: string;
  /** Whether the wall was looked at again since it was planned. */
  readonly isOld: boolean;
};

/** How high the drawing may be, in points. */
const drawingHigh = 390;

/**
 * The installer’s sheet: the wall with its piece to scale, where to drill and with what, what each
 * fixing bears, who lifts it, and what to mind.
 */
export async function planPdf(
  sheet: PlanPaper,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const write = (paper: Paper) => {
    const work = onlyKnownSigns(paper, sheet.work, 'italic') || 'A piece';
    const collector = onlyKnownSigns(paper, sheet.collector, 'sans');
    writePaperHead(paper, { ...sheet, work, collector, title: 'How it hangs' });
    writeWarning(paper, sheet);
    const drawing = drawWall({ wall: sheet.wall, plan: sheet.plan }, gallery.lengthUnit);
    const scale = drawWallOn(paper, drawing, drawingHigh);
    writeScale(paper, scale);
    writeFigures(paper, sheet, gallery);
    writeHoles(paper, sheet, gallery);
    writeLift(paper, sheet);
    writeAdvice(paper, sheet);
  };
  return makePaper(`How it hangs: ${sheet.work}`, gallery, write, fullPageOf(gallery));
}

function writeWarning(paper: Paper, { isOld }: PlanPaper): void {
  paper.font('bold').fontSize(9.5).fillColor('#8c3a16').text(decideOnSite);
  if (isOld) {
    paper.text(
      'The wall was looked at again since this was planned: plan it anew before you drill.',
    );
  }
  paper.fillColor(iron).moveDown(0.4);
}

function writeScale(paper: Paper, scale: number): void {
  const { margin } = sizeOf(paper);
  const words = `Scale 1 to ${scale}. The wall is seen from the front; heights are from the floor, lengths from its left end. What is dashed is in the wall.`;
  paper.font('sans').fontSize(8).fillColor(ash).text(words, margin, paper.y).fillColor(iron);
}

function writeFigures(paper: Paper, sheet: PlanPaper, { lengthUnit }: Gallery): void {
  const { plan, told, cleat } = sheet;
  const length = (um: number) => formatLength(um, lengthUnit);
  const weight = (grams: number) => formatWeight(grams, lengthUnit === 'in' ? 'lb' : 'kg');
  const { cleatUm, piece, cleat: onWall } = plan.place;
  writeHeading(paper, 'What it takes');
  paper.font('sans').fontSize(10);
  const lines: [string, string][] = [
    [`Weight: ${sheet.weightWords}`, ''],
    [`Wall: ${onlyKnownSigns(paper, sheet.wallWords, 'sans')}`, ''],
    [`Fixed with ${told.fixings ?? ''}`, `${plan.rows} at each of ${plan.atUms.length}`],
    ...(plan.inWoodUm === null
      ? []
      : [['Of each screw sits in the wood', length(plan.inWoodUm)] as [string, string]]),
    [
      `Cleat: ${cleatWords[cleat.made]}, ${length(cleat.thicknessUm)} thick, ${length(cleat.heightUm)} high`,
      `${length(onWall.widthUm)} long`,
    ],
    ['Middle of the cleat above the floor', length(cleatUm)],
    ['Lower edge of the piece above the floor', length(piece.bottomUm)],
    [
      'The fixing that bears most',
      `${weight(plan.pushEachG)} down, ${weight(plan.pullEachG)} off the wall`,
    ],
    [
      `It may bear ${weight(plan.bearsEachG)} that way; ${plan.factorAsked} times is asked`,
      `${Math.floor(plan.factor * 10) / 10} times over`,
    ],
  ];
  for (const [words, figure] of lines) {
    keepTogether(paper, 18);
    wordsAndFigure(paper, words, figure);
  }
  paper.x = sizeOf(paper).margin;
}

function writeHoles(paper: Paper, { plan }: PlanPaper, { lengthUnit }: Gallery): void {
  writeHeading(paper, 'Where to drill');
  const length = (um: number) => formatLength(um, lengthUnit);
  for (const [at, { xUm, yUm }] of plan.holes.entries()) {
    keepTogether(paper, 16);
    const words = `${at + 1}. ${length(xUm)} from the left end of the wall`;
    wordsAndFigure(paper, words, `${length(yUm)} from the floor`);
  }
  paper.x = sizeOf(paper).margin;
}

function writeLift(paper: Paper, { told: { hands } }: PlanPaper): void {
  writeHeading(paper, 'Who lifts it');
  writeWords(paper, hands ? hands.words.join(' ') : 'At least two people.');
  writeWords(
    paper,
    'One leads and says so aloud. Gloves with grip, no rings. Lift by the board, both hands, close to the body, the floor before the wall clear.',
  );
}

function writeAdvice(paper: Paper, { told: { advice } }: PlanPaper): void {
  writeHeading(paper, 'In this order');
  for (const sentence of advice) {
    keepTogether(paper, 30);
    const { margin, width } = sizeOf(paper);
    const top = paper.y;
    paper
      .rect(margin, top + 2, 7, 7)
      .lineWidth(0.6)
      .strokeColor(iron)
      .stroke();
    paper.font('sans').fontSize(10).fillColor(iron);
    paper.text(sentence, margin + 14, top, { width: width - 2 * margin - 14, lineGap: 2 });
    paper.moveDown(0.2);
  }
  paper.x = sizeOf(paper).margin;
}
