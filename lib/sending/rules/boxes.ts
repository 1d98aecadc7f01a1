import type { BoxKind } from '@/lib/freight/rules/boxing';
import { materials, reckonBox } from '@/lib/freight/rules/boxing';
import type { Sides } from '@/lib/freight/rules/measures';
import { proposeBoxes, type ProposedBox, type ToSend } from '@/lib/freight/rules/proposing';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { PieceToGo } from './typed/pieces';
import { contentsWeigh, type ContentTold } from './typed/contents';

/** A box as it is to be kept: its outside, padding and contents, and about what it weighs. */
export type BoxToKeep = Sides & {
  readonly kind: BoxKind;
  readonly paddingUm: number;
  readonly reckonedG: number;
  readonly contents: readonly ContentTold[];
};

/** The most boxes of one shipment. */
export const boxesMost = 99;

/** Why boxes were not kept. */
export type BoxRefusal =
  | { code: 'no_such_box' }
  | { code: 'left_already' }
  | { code: 'too_many_boxes'; boxes: number }
  | { code: 'part_elsewhere'; partNumber: number; box: number }
  | { code: 'no_such_part'; partNumber: number; parts: number }
  | { code: 'changed_meanwhile' };

/** Boxes are made to the next eighth of an inch, in whole micrometres. */
const madeToUm = 3_175;

/**
 * Boxes and crates for what is to go, each with its contents by layer.
 *
 * @returns every piece in exactly one; refuses more boxes than a shipment has
 * @source common practice, as {@link proposeBoxes}
 */
export function proposeFor(pieces: readonly PieceToGo[]): Result<BoxToKeep[], BoxRefusal> {
  const toSend = pieces.flatMap((piece, line) =>
    Array.from({ length: piece.pieces }, (_, at): ToSend => {
      const { heightUm, widthUm, depthUm, weightG, partNumber } = piece;
      const sides = { lengthUm: widthUm, widthUm: heightUm, heightUm: depthUm };
      return { ...sides, key: `${line}:${at}`, weightG, partNumber };
    }),
  );
  const proposed = proposeBoxes(toSend);
  if (!proposed.ok || proposed.value.length > boxesMost) {
    return refuse({ code: 'too_many_boxes', boxes: proposed.ok ? proposed.value.length : 0 });
  }
  return ok(proposed.value.map((box) => kept(box, pieces)));
}

function kept(box: ProposedBox, pieces: readonly PieceToGo[]): BoxToKeep {
  const { lengthUm, widthUm, heightUm } = box.reckoned.outside;
  return {
    ...{ kind: box.kind, paddingUm: box.paddingUm, reckonedG: box.reckoned.grossG },
    ...{ lengthUm: made(lengthUm), widthUm: made(widthUm), heightUm: made(heightUm) },
    contents: box.layers.flatMap((keys, layer) => inLayer(keys, layer + 1, pieces)),
  };
}

function made(um: number): number {
  return Math.ceil(um / madeToUm) * madeToUm;
}

/** What lies in one layer, each line of the list once with how many of it lie here, in its order. */
function inLayer(
  keys: readonly string[],
  layer: number,
  pieces: readonly PieceToGo[],
): ContentTold[] {
  const lines = keys.map((key) => Number(key.split(':')[0]));
  return [...new Set(lines)]
    .toSorted((a, b) => a - b)
    .flatMap((line) => {
      const piece = pieces[line];
      if (!piece) return [];
      const { words, partNumber, weightG } = piece;
      const here = lines.filter((each) => each === line).length;
      return [{ pieces: here, words, partNumber, weightG, layer }];
    });
}

/**
 * About what a box of this outside weighs with that in it.
 *
 * @source as {@link reckonBox}, from the outside inwards; the scale decides
 */
export function reckonedWeightG(
  box: Sides & { kind: BoxKind; paddingUm: number },
  contents: readonly Pick<ContentTold, 'pieces' | 'weightG'>[],
): number {
  const { kind, paddingUm } = box;
  const walls = wallUm(kind) + paddingUm;
  const inside = (um: number): number => Math.max(1_000, um - 2 * walls);
  const content = {
    ...{ lengthUm: inside(box.lengthUm), widthUm: inside(box.widthUm) },
    ...{ heightUm: inside(box.heightUm), weightG: 1 },
  };
  const reckoned = reckonBox(content, { kind, paddingUm, hasBoards: false });
  const tareG = reckoned.ok ? reckoned.value.tareG : 0;
  return Math.max(1, tareG + contentsWeigh(contents));
}

function wallUm(kind: BoxKind): number {
  const { corrugated, plywood, batten, closeUm } = materials;
  if (kind === 'crate') return plywood.thickUm + batten.thickUm;
  return kind === 'box' ? corrugated.thickUm : 2 * corrugated.thickUm + closeUm;
}

/**
 * The first part that cannot lie in a box: one that lies in another already, or that the drawing
 * does not have; null when all can.
 *
 * @param partsInAll how many numbers the drawing has; null where there is none
 */
export function partFault(
  contents: readonly Pick<ContentTold, 'partNumber'>[],
  elsewhere: readonly { partNumber: number; box: number }[],
  partsInAll: number | null,
): BoxRefusal | null {
  for (const { partNumber } of contents) {
    if (partNumber === null) continue;
    const other = elsewhere.find((each) => each.partNumber === partNumber);
    if (other) return { code: 'part_elsewhere', partNumber, box: other.box };
    if (partsInAll !== null && partNumber > partsInAll) {
      return { code: 'no_such_part', partNumber, parts: partsInAll };
    }
  }
  return null;
}
