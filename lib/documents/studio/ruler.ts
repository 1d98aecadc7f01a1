import 'server-only';
import { ash, iron, type Paper } from '../paper';

/** Points in a whole micrometre: 72 to the inch of 25,400. */
export const pointsPerUm = 72 / 25_400;

/** How tall the longest stroke of a ruler is, in points. */
const strokeLong = 10;
const strokeShort = 6;

type Ruler = { words: string; stepUm: number; steps: number; longEvery: number };

const rulers: readonly Ruler[] = [
  { words: '100 mm', stepUm: 5_000, steps: 20, longEvery: 2 },
  { words: '4 in', stepUm: 12_700, steps: 8, longEvery: 2 },
];

/** How far the second ruler stands below the first, and how much room both take, in points. */
const apart = 30;
/** See {@link apart}. */
export const rulersWidth = 4 * 72;

/**
 * Two rulers, one of 100 mm and one of 4 in, to be held against a real one: a printer that fits the
 * page to itself is found out by them.
 *
 * @param corner the left end of the upper ruler’s line, in points
 */
export function drawRulers(paper: Paper, corner: { x: number; y: number }): void {
  for (const [at, ruler] of rulers.entries())
    drawRuler(paper, ruler, corner.x, corner.y + at * apart);
}

function drawRuler(paper: Paper, ruler: Ruler, x: number, y: number): void {
  const { stepUm, steps, longEvery } = ruler;
  const place = (step: number) => x + step * stepUm * pointsPerUm;
  paper.lineWidth(0.5).strokeColor(iron);
  paper.moveTo(place(0), y).lineTo(place(steps), y).stroke();
  for (let step = 0; step <= steps; step += 1) {
    const height = step % longEvery === 0 ? strokeLong : strokeShort;
    paper
      .moveTo(place(step), y)
      .lineTo(place(step), y - height)
      .stroke();
  }
  paper
    .font('sans')
    .fontSize(7.5)
    .fillColor(ash)
    .text(`${ruler.words} from the first stroke to the last`, x, y + 2, { lineBreak: false });
}
