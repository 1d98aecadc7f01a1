import 'server-only';
import type { LabelBlock } from '../rules/labels/words';
import type { Paper } from '../paper';

/** One line of text as it is drawn: in which hand, how large, how far down in its box. */
export type FittedLine = {
  text: string;
  face: LabelBlock['face'];
  size: number;
  y: number;
  isQuiet: boolean;
};

/** A box on a label, in points. */
export type Box = { width: number; height: number };

const leading = 1.16;
/** On a large label the text may be set larger than asked for. */
const larger = [1.5, 1.35, 1.2, 1.1] as const;
const largeHeight = 150;
const scales = [1, 0.94, 0.88, 0.82, 0.76, 0.7, 0.64, 0.58, 0.52, 0.46] as const;

/**
 * Sets blocks of text into a box: as large as they go in whole, smaller where they must; when even
 * the smallest does not hold them, what may be left out is left out and what is kept is cut with
 * an ellipsis. Nothing ever stands outside the box.
 */
export function fitBlocks(paper: Paper, blocks: readonly LabelBlock[], box: Box): FittedLine[] {
  const tried = box.height >= largeHeight ? [...larger, ...scales] : scales;
  for (const scale of tried) {
    const whole = blocks.map((block) => setBlock(paper, block, scale, box.width));
    if (whole.every((set) => !set.isCut) && heightOf(whole) <= box.height) return stack(whole);
  }
  const smallest = blocks.map((block) => setBlock(paper, block, 0, box.width));
  return stack(choose(paper, blocks, smallest, box));
}

type SetBlock = { block: LabelBlock; size: number; lines: string[]; isCut: boolean };

function setBlock(paper: Paper, block: LabelBlock, scale: number, width: number): SetBlock {
  const size = Math.max(block.least, block.size * scale);
  return { block, size, ...wrap(paper.font(block.face).fontSize(size), block, width) };
}

function heightOf(sets: readonly SetBlock[]): number {
  return sets.reduce((sum, { lines, size }) => sum + lines.length * size * leading, 0);
}

/** Kept blocks first, one line of each if need be; then the others from the top while there is room. */
function choose(
  paper: Paper,
  blocks: readonly LabelBlock[],
  smallest: readonly SetBlock[],
  box: Box,
): SetBlock[] {
  const kept = smallest.filter(({ block }) => block.isKept);
  const isTight = heightOf(kept) > box.height;
  const chosen = new Map<LabelBlock, SetBlock>();
  let left = box.height;
  for (const set of [...kept, ...smallest.filter(({ block }) => !block.isKept)]) {
    const fitted = isTight ? setBlock(paper, { ...set.block, lines: 1 }, 0, box.width) : set;
    const height = heightOf([fitted]);
    if (height > left) continue;
    left -= height;
    chosen.set(set.block, fitted);
  }
  return blocks.flatMap((block) => chosen.get(block) ?? []);
}

function stack(sets: readonly SetBlock[]): FittedLine[] {
  let y = 0;
  return sets.flatMap(({ block, size, lines }) =>
    lines.map((text) => {
      const line = { text, face: block.face, size, y, isQuiet: block.isQuiet };
      y += size * leading;
      return line;
    }),
  );
}

function wrap(
  paper: Paper,
  { text, lines: most }: LabelBlock,
  width: number,
): { lines: string[]; isCut: boolean } {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (paper.widthOfString(longer) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const parts = breakWord(paper, word, width);
    lines.push(...parts.slice(0, -1));
    line = parts.at(-1) ?? '';
  }
  if (line !== '') lines.push(line);
  if (lines.length <= most) return { lines, isCut: false };
  const last = lines.slice(most - 1).join(' ');
  return { lines: [...lines.slice(0, most - 1), withEllipsis(paper, last, width)], isCut: true };
}

function breakWord(paper: Paper, word: string, width: number): string[] {
  const parts: string[] = [];
  let part = '';
  for (const sign of word) {
    if (part !== '' && paper.widthOfString(part + sign) > width) {
      parts.push(part);
      part = '';
    }
    part += sign;
  }
  return [...parts, part];
}

function withEllipsis(paper: Paper, text: string, width: number): string {
  let signs = Array.from(text);
  while (signs.length > 0 && paper.widthOfString(`${signs.join('').trimEnd()}…`) > width) {
    signs = signs.slice(0, -1);
  }
  return `${signs.join('').trimEnd()}…`;
}
