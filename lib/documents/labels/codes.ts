import 'server-only';
import bwip from 'bwip-js/node';
import { create } from 'qrcode';
import { z } from 'zod';
import type { Paper } from '../paper';

/** Where a code stands, in points: its upper left corner. */
export type CodeSpot = { x: number; y: number };

/** Modules of white that a QR code keeps on each side. */
const qrQuiet = 4;
/** Modules of white that bars keep on each side. */
const barsQuiet = 10;
/** The widest bar of one module, in points. */
const barMost = 1.3;

/**
 * Draws a QR code with its white margin into a square, as shapes and not as a picture.
 *
 * @source ISO/IEC 18004: recovery level M, four modules of white
 */
export function drawQr(paper: Paper, text: string, spot: CodeSpot & { side: number }): void {
  const { modules } = create(text, { errorCorrectionLevel: 'M' });
  const cell = spot.side / (modules.size + 2 * qrQuiet);
  paper.fillColor('#000000');
  for (let row = 0; row < modules.size; row += 1) {
    for (let column = 0; column < modules.size; column += 1) {
      if (!modules.get(row, column)) continue;
      const x = spot.x + (qrQuiet + column) * cell;
      const y = spot.y + (qrQuiet + row) * cell;
      paper.rect(x, y, cell, cell);
    }
  }
  paper.fill();
}

const barsRow = z.tuple([z.object({ sbs: z.array(z.number()) })], z.unknown());

/**
 * Draws a Code 128 with its white margins into a box, ranged left; as wide as it may be.
 *
 * @source ISO/IEC 15417: ten modules of white on each side
 */
export function drawBars(
  paper: Paper,
  text: string,
  spot: CodeSpot & { width: number; height: number },
): void {
  const widths = barsOf(text);
  const all = widths.reduce((sum, width) => sum + width, 0) + 2 * barsQuiet;
  const cell = Math.min(barMost, spot.width / all);
  paper.fillColor('#000000');
  let x = spot.x + barsQuiet * cell;
  for (const [at, width] of widths.entries()) {
    if (at % 2 === 0) paper.rect(x, spot.y, width * cell, spot.height);
    x += width * cell;
  }
  paper.fill();
}

/** Bars and spaces in turn, in modules. */
function barsOf(text: string): number[] {
  return barsRow.parse(bwip.raw('code128', text, ''))[0].sbs;
}
