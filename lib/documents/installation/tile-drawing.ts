import 'server-only';
import { formatLength, type LengthSystem } from '@/lib/units/rules';
import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import type { TileAxis } from '@/lib/walls/rules/tiles/axis';
import { placeOfSet, type OnWall, type TileLayout } from '@/lib/walls/rules/tiles/layout';
import { openingWords } from '@/lib/walls/rules/tiles/words';
import { ash, iron, sizeOf, type Paper } from '../paper';
import { pointsPerUm } from '../studio/ruler';

/** How many times smaller than the wall a drawing may be; the first that fits is taken. */
const scales = [1, 2, 4, 5, 8, 10, 12, 15, 16, 20, 24, 25, 30, 40, 50, 75, 100, 150, 200, 400];
/** Room around the tiles for measurements, in points. */
const room = { left: 24, right: 40, above: 22, below: 34 };

/** A wall with its tiles, and how lengths are told. */
export type TilesToDraw = { asked: TileWallAsked; layout: TileLayout; system: LengthSystem };

type OnPaper = { left: number; top: number; wide: number; high: number; per: number };

/**
 * Draws a wall with its tiles at the largest of the usual scales that fits.
 *
 * @param heightMost how high it may be on the paper, in points
 * @returns the scale: 10 for one to ten
 */
export function drawTilesOn(paper: Paper, tiles: TilesToDraw, heightMost: number): number {
  const { asked } = tiles;
  const { width, margin } = sizeOf(paper);
  const across = width - 2 * margin - room.left - room.right;
  const up = heightMost - room.above - room.below;
  const scale = scales.find(
    (one) =>
      (asked.widthUm * pointsPerUm) / one <= across && (asked.heightUm * pointsPerUm) / one <= up,
  );
  const chosen = scale ?? smallest({ asked, across, up });
  const per = pointsPerUm / chosen;
  const on = {
    ...{ left: margin + room.left, top: paper.y + room.above, per },
    ...{ wide: asked.widthUm * per, high: asked.heightUm * per },
  };
  drawCells(paper, tiles, on);
  drawOpenings(paper, tiles, on);
  drawSets(paper, tiles, on);
  drawMeasures(paper, tiles, on);
  paper.fillColor(iron).strokeColor(iron);
  paper.x = margin;
  paper.y = on.top + on.high + room.below;
  return chosen;
}

/** A wall larger than the usual scales reach: the next whole hundred. */
function smallest(fit: { asked: TileWallAsked; across: number; up: number }): number {
  const { asked, across, up } = fit;
  const wanted = Math.max(asked.widthUm / across, asked.heightUm / up) * pointsPerUm;
  return Math.ceil(wanted / 100) * 100;
}

function boxOf(on: OnPaper, spot: OnWall): [x: number, y: number, w: number, h: number] {
  const { left, top, high, per } = on;
  const y = top + high - (spot.bottomUm + spot.heightUm) * per;
  return [left + spot.leftUm * per, y, spot.widthUm * per, spot.heightUm * per];
}

function drawCells(paper: Paper, { layout }: TilesToDraw, on: OnPaper): void {
  paper.lineWidth(0.35).strokeColor(ash);
  for (const cell of layout.cells) {
    if (cell.kind === 'covered' || cell.kind === 'set') continue;
    paper.rect(...boxOf(on, cell));
    if (cell.kind === 'cut') paper.fillAndStroke('#efe6d2', ash);
    else paper.stroke();
  }
  paper.lineWidth(1).strokeColor(iron).rect(on.left, on.top, on.wide, on.high).stroke();
}

function drawOpenings(paper: Paper, { asked }: TilesToDraw, on: OnPaper): void {
  for (const opening of asked.openings) {
    const box = boxOf(on, opening);
    paper.lineWidth(0.8).rect(...box);
    paper.fillAndStroke('#ffffff', iron);
    writeIn(paper, openingWords[opening.kind], box);
  }
}

function drawSets(paper: Paper, { asked, layout }: TilesToDraw, on: OnPaper): void {
  for (const [at, set] of asked.sets.entries()) {
    const place = placeOfSet(set, layout.columns, layout.rows);
    if (!place) continue;
    const box = boxOf(on, place);
    paper.lineWidth(1.3).rect(...box);
    paper.fillAndStroke('#e6ece4', iron);
    writeIn(paper, String(at + 1), box);
  }
}

function writeIn(paper: Paper, words: string, box: [number, number, number, number]): void {
  const [x, y, width, height] = box;
  const size = Math.min(11, height * 0.7, (width * 1.6) / words.length);
  if (size < 3.5) return;
  paper.font('bold').fontSize(size).fillColor(iron);
  const left = x + (width - paper.widthOfString(words)) / 2;
  paper.text(words, left, y + height / 2 - size * 0.62, { lineBreak: false });
}

function drawMeasures(paper: Paper, { asked, layout, system }: TilesToDraw, on: OnPaper): void {
  const { left, top, wide, high } = on;
  paper.lineWidth(0.5).strokeColor(ash);
  const below = top + high + 10;
  paper
    .moveTo(left, below)
    .lineTo(left + wide, below)
    .stroke();
  const right = left + wide + 10;
  paper
    .moveTo(right, top)
    .lineTo(right, top + high)
    .stroke();
  for (const [x, y] of [
    [left, below],
    [left + wide, below],
  ] as const) {
    paper
      .moveTo(x, y - 4)
      .lineTo(x, y + 4)
      .stroke();
  }
  for (const y of [top, top + high]) {
    paper
      .moveTo(right - 4, y)
      .lineTo(right + 4, y)
      .stroke();
  }
  paper.font('sans').fontSize(8).fillColor(ash);
  writeMiddle(paper, formatLength(asked.widthUm, system), left + wide / 2, below + 5);
  writeUp(paper, formatLength(asked.heightUm, system), right + 6, top + high / 2);
  for (const part of partsOf(layout.columns, { tileUm: asked.tileWidthUm, system })) {
    writeMiddle(paper, part.words, left + part.middleUm * on.per, top - 13);
  }
  for (const part of partsOf(layout.rows, { tileUm: asked.tileHeightUm, system })) {
    writeUp(paper, part.words, left - 14, top + high - part.middleUm * on.per);
  }
}

function writeMiddle(paper: Paper, words: string, x: number, y: number): void {
  paper.text(words, x - paper.widthOfString(words) / 2, y, { lineBreak: false });
}

function writeUp(paper: Paper, words: string, x: number, y: number): void {
  paper.save();
  paper.rotate(-90, { origin: [x, y] });
  paper.text(words, x - paper.widthOfString(words) / 2, y, { lineBreak: false });
  paper.restore();
}

/** What is measured along one side: each cut end, and how many whole tiles stand between. */
function partsOf(
  { strips, fullCount }: TileAxis,
  { tileUm, system }: { tileUm: number; system: LengthSystem },
): { middleUm: number; words: string }[] {
  const cuts = strips
    .filter(({ isCut }) => isCut)
    .map(({ fromUm, sizeUm }) => ({
      middleUm: fromUm + sizeUm / 2,
      words: formatLength(sizeUm, system),
    }));
  const full = strips.filter(({ isCut }) => !isCut);
  const [first, last] = [full.at(0), full.at(-1)];
  if (!first || !last) return cuts;
  const middleUm = (first.fromUm + last.fromUm + last.sizeUm) / 2;
  return [...cuts, { middleUm, words: `${fullCount} × ${formatLength(tileUm, system)}` }];
}
