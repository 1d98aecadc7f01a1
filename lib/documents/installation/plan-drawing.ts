import 'server-only';
import type { Measure, Shape, ShapeRole, WallDrawing } from '@/lib/walls/rules/drawing/drawing';
import { ash, iron, sizeOf, type Paper } from '../paper';

/** How many times smaller than the wall a drawing may be; the first that fits is taken. */
const scales = [5, 8, 10, 12, 15, 16, 20, 24, 25, 30, 32, 40, 48, 50, 60, 64, 75, 100, 150, 200];
const pointsPerUm = 72 / 25_400;
/** Room for the measurements at the left and below, in points. */
const room = { left: 92, below: 66 };
/** How far out the first measurement stands, and each one further, in points. */
const [firstOut, eachOut] = [12, 17];

type Ink = {
  readonly fill: string | null;
  readonly line: string;
  readonly width: number;
  readonly dash: number | null;
};

const inks: Readonly<Record<ShapeRole, Ink>> = {
  wall: { fill: null, line: iron, width: 0.8, dash: null },
  stud: { fill: '#f3efe9', line: '#b9aea1', width: 0.4, dash: 3 },
  furniture: { fill: '#efe6d2', line: ash, width: 0.6, dash: null },
  obstacle: { fill: '#efe6d2', line: ash, width: 0.6, dash: null },
  inTheWall: { fill: null, line: '#a2451f', width: 0.9, dash: 4 },
  piece: { fill: '#e6ece4', line: iron, width: 1.3, dash: null },
  cleat: { fill: '#ffffff', line: iron, width: 0.7, dash: null },
  spacer: { fill: null, line: iron, width: 0.5, dash: null },
  hole: { fill: iron, line: iron, width: 0.3, dash: null },
};

/** A wall on paper: where it begins, how high it is, and points for a micrometre. */
type OnPaper = {
  readonly left: number;
  readonly top: number;
  readonly high: number;
  readonly per: number;
};

/**
 * Draws a wall with its piece at the largest of the usual scales that fits.
 *
 * @param heightMost how high it may be on the paper, in points
 * @returns the scale: 20 for one to twenty
 */
export function drawWallOn(paper: Paper, drawing: WallDrawing, heightMost: number): number {
  const { width, margin } = sizeOf(paper);
  const wide = width - 2 * margin - room.left;
  const scale = scaleFor(drawing, wide, heightMost - room.below);
  const per = pointsPerUm / scale;
  const high = drawing.heightUm * per;
  const on = { left: margin + room.left, top: paper.y + 6, high, per };
  for (const shape of drawing.shapes) drawShape(paper, shape, on);
  drawFloor(paper, drawing, on);
  for (const measure of drawing.measures) drawMeasure(paper, measure, on);
  paper.undash().fillColor(iron).strokeColor(iron);
  paper.x = margin;
  paper.y = on.top + high + room.below;
  return scale;
}

function scaleFor({ widthUm, heightUm }: WallDrawing, wide: number, high: number): number {
  const needed = Math.max(widthUm / wide, heightUm / high) * pointsPerUm;
  return scales.find((scale) => scale >= needed) ?? Math.ceil(needed / 50) * 50;
}

function drawShape(paper: Paper, shape: Shape, { left, top, high, per }: OnPaper): void {
  const { role, leftUm, bottomUm, widthUm, heightUm } = shape;
  const { fill, line, width, dash } = inks[role];
  const [x, y] = [left + leftUm * per, top + high - (bottomUm + heightUm) * per];
  if (role === 'hole') {
    const radius = Math.max((widthUm * per) / 2, 1.1);
    paper.circle(x + (widthUm * per) / 2, y + (heightUm * per) / 2, radius);
  } else {
    paper.rect(x, y, widthUm * per, heightUm * per);
  }
  paper.lineWidth(width).strokeColor(line);
  if (dash === null) paper.undash();
  else paper.dash(dash, { space: 2 });
  if (fill === null) paper.stroke();
  else paper.fillAndStroke(fill, line);
  if (role === 'obstacle' || role === 'furniture' || role === 'inTheWall') {
    paper.font('sans').fontSize(6).fillColor(ash);
    paper.text(shape.name, x + 2, y + 1.5, { lineBreak: false });
  }
}

function drawFloor(
  paper: Paper,
  { widthUm }: WallDrawing,
  { left, top, high, per }: OnPaper,
): void {
  const y = top + high;
  paper.undash().lineWidth(1.6).strokeColor(iron);
  paper
    .moveTo(left - 6, y)
    .lineTo(left + widthUm * per + 6, y)
    .stroke();
}

function drawMeasure(paper: Paper, measure: Measure, { left, top, high, per }: OnPaper): void {
  const { along, fromUm, untilUm, rank, words } = measure;
  const out = firstOut + rank * eachOut;
  paper.undash().lineWidth(0.4).strokeColor(iron).fillColor(iron).font('sans').fontSize(7);
  const half = paper.widthOfString(words) / 2;
  if (along === 'wall') {
    const y = top + high + out;
    const [from, until] = [left + fromUm * per, left + untilUm * per];
    paper.moveTo(from, y).lineTo(until, y).stroke();
    for (const x of [from, until]) tick(paper, x, y - 3, x, y + 3);
    paper.text(words, (from + until) / 2 - half, y - 9, { lineBreak: false });
    return;
  }
  const x = left - out;
  const [from, until] = [top + high - fromUm * per, top + high - untilUm * per];
  paper.moveTo(x, from).lineTo(x, until).stroke();
  for (const y of [from, until]) tick(paper, x - 3, y, x + 3, y);
  const middle = (from + until) / 2;
  paper.save();
  paper.rotate(-90, { origin: [x, middle] });
  paper.text(words, x - half, middle - 9, { lineBreak: false });
  paper.restore();
}

function tick(paper: Paper, ...[x1, y1, x2, y2]: [number, number, number, number]): void {
  paper.moveTo(x1, y1).lineTo(x2, y2).stroke();
}
