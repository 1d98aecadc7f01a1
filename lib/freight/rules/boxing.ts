import { ok, refuse, type Result } from '@/lib/platform/result';
import { soundBox, type MeasureRefusal, type Sides, type Weighed } from './measures';

/** What things travel in. */
export type BoxKind = 'box' | 'double_box' | 'crate';

/** How something is to be packed. */
export type BoxAsked = {
  readonly kind: BoxKind;
  /** Foam or fill on every side of what is in it, in whole micrometres. */
  readonly paddingUm: number;
  /** Stiff boards under and over what lies flat. */
  readonly hasBoards: boolean;
};

/** A box as it was reckoned: outside, inside, and what it weighs empty and full. */
export type BoxReckoned = {
  readonly outside: Sides;
  readonly inside: Sides;
  readonly tareG: number;
  readonly grossG: number;
};

/**
 * What boxes and crates are made of. Thicknesses in whole micrometres, densities in g to the cubic
 * centimetre, board in g to the square metre.
 *
 * @source common practice: double-wall board, 3/8 in plywood on 3/4 × 2 1/2 in battens, foam of
 *   2.2 lb to the cubic foot; a box made otherwise is put on the scale
 */
export const materials = {
  corrugated: { thickUm: 6_350, gPerM2: 900, flaps: 1.5 },
  plywood: { thickUm: 9_525, gPerCm3: 0.55 },
  batten: { thickUm: 19_050, wideUm: 63_500, gPerCm3: 0.45 },
  board: { thickUm: 6_350, gPerCm3: 0.55 },
  foam: { gPerCm3: 0.035 },
  /** How much of the free room inside a crate the islands of foam take. */
  islands: 0.35,
  /** The sleeve or sheet of foam that lies close around what is in an inner box. */
  closeUm: 6_350,
} as const;

/** Padding that is common: two inches all round, in whole micrometres. */
export const paddingUsualUm = 50_800;
/** The most padding that can be asked for: a foot, in whole micrometres. */
export const paddingMostUm = 304_800;

/**
 * A box for something: its outside and inside, and about what it weighs.
 *
 * @param content the sides of what goes into it, as it lies there, and what that weighs
 * @returns refuses what {@link soundBox} refuses
 * @source volumes times densities of {@link materials}; the scale decides, never this
 * @example a tile of 6 × 6 × 1/2 in and 1.5 lb in a double box with 2 in // 11 1/2 × 11 1/2 × 6 in, 3.5 lb
 */
export function reckonBox(content: Weighed, asked: BoxAsked): Result<BoxReckoned, MeasureRefusal> {
  const sound = soundBox(content);
  if (!sound.ok) return refuse(sound.refusal);
  const built = asked.kind === 'crate' ? crateAround(content, asked) : boxAround(content, asked);
  const boardsG = asked.hasBoards ? boardsWeigh(content) : 0;
  const tareG = Math.round(built.tareG + boardsG);
  return ok({
    ...{ outside: built.outside, inside: built.inside },
    ...{ tareG, grossG: content.weightG + tareG },
  });
}

type Built = { outside: Sides; inside: Sides; tareG: number };

function crateAround(content: Weighed, { paddingUm }: BoxAsked): Built {
  const { plywood, batten, foam, islands } = materials;
  const inside = grown(content, paddingUm);
  const shell = grown(inside, plywood.thickUm);
  const outside = grown(shell, batten.thickUm);
  const edgesUm = 4 * (shell.lengthUm + shell.widthUm + shell.heightUm);
  const battenCm3 = (edgesUm / 1e4) * (batten.thickUm / 1e4) * (batten.wideUm / 1e4);
  const tareG =
    (cm3(shell) - cm3(inside)) * plywood.gPerCm3 +
    battenCm3 * batten.gPerCm3 +
    (cm3(inside) - cm3(content)) * islands * foam.gPerCm3;
  return { outside, inside, tareG };
}

function boxAround(content: Weighed, { kind, paddingUm }: BoxAsked): Built {
  const { corrugated, closeUm, foam } = materials;
  const inner = kind === 'double_box' ? grown(content, closeUm + corrugated.thickUm) : content;
  const inside = grown(inner, paddingUm);
  const outside = grown(inside, corrugated.thickUm);
  const boardM2 = m2(outside) + (kind === 'double_box' ? m2(inner) : 0);
  const tareG =
    boardM2 * corrugated.flaps * corrugated.gPerM2 + (cm3(inside) - cm3(content)) * foam.gPerCm3;
  return { outside, inside, tareG };
}

function boardsWeigh(content: Sides): number {
  const { board } = materials;
  return (
    2 * (content.lengthUm / 1e4) * (content.widthUm / 1e4) * (board.thickUm / 1e4) * board.gPerCm3
  );
}

/** The same with so much more on every side. */
function grown(sides: Sides, byUm: number): Sides {
  return {
    lengthUm: sides.lengthUm + 2 * byUm,
    widthUm: sides.widthUm + 2 * byUm,
    heightUm: sides.heightUm + 2 * byUm,
  };
}

function cm3({ lengthUm, widthUm, heightUm }: Sides): number {
  return (lengthUm / 1e4) * (widthUm / 1e4) * (heightUm / 1e4);
}

/** The outer face of a box, in square metres. */
function m2({ lengthUm, widthUm, heightUm }: Sides): number {
  const [length, width, height] = [lengthUm / 1e6, widthUm / 1e6, heightUm / 1e6];
  return 2 * (length * width + length * height + width * height);
}
