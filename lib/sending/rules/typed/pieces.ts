import { ok, refuse, type Result } from '@/lib/platform/result';
import { formatWeight, mostG, type LengthSystem } from '@/lib/units/rules';
import {
  namedTyped,
  readNamed,
  readSides,
  readWeight,
  sidesTyped,
  weighedIn,
  weightTyped,
  type Named,
} from './line';

/** Something that is to go: how many of it, its sides as it hangs, and what one weighs. */
export type PieceToGo = Named & {
  readonly heightUm: number;
  readonly widthUm: number;
  readonly depthUm: number;
  readonly weightG: number;
};

/** The most lines, and the most pieces together, of one list. */
export const listMost = { lines: 300, pieces: 600 } as const;

/** Why a list of what is to go was not read; lines count from one. */
export type PiecesRefusal =
  | { code: 'nothing_to_go' }
  | { code: 'too_much_to_go'; pieces: number }
  | {
      code: 'line_not_read';
      line: number;
      text: string;
      what: 'parts' | 'name' | 'size' | 'weight';
    }
  | { code: 'part_twice'; partNumber: number };

/**
 * Reads what is to go, one on each line: what it is; height × width × depth; weight of one.
 *
 * @param unit how the gallery measures: a bare figure is inches and pounds, or millimetres and kilos
 * @returns refuses, in this order: nothing, a line that does not read and which part of it, a part
 *   that is named twice, too much at once
 * @example readPieces('2 × Tern over shoals; 10 × 10 × 1 in; 6 lb 4 oz', 'in')
 */
export function readPieces(text: string, unit: LengthSystem): Result<PieceToGo[], PiecesRefusal> {
  const lines = text.split(/\r?\n/).map((line, at) => ({ line: line.trim(), number: at + 1 }));
  const written = lines.filter(({ line }) => line !== '');
  if (written.length === 0) return refuse({ code: 'nothing_to_go' });
  const pieces: PieceToGo[] = [];
  for (const { line, number } of written) {
    const read = readPiece(line, unit);
    if (typeof read === 'string') {
      return refuse({ code: 'line_not_read', line: number, text: line.slice(0, 60), what: read });
    }
    pieces.push(read);
  }
  const twice = firstTwice(pieces.flatMap(({ partNumber }) => partNumber ?? []));
  if (twice !== null) return refuse({ code: 'part_twice', partNumber: twice });
  const inAll = pieces.reduce((sum, piece) => sum + piece.pieces, 0);
  const isTooMuch = written.length > listMost.lines || inAll > listMost.pieces;
  return isTooMuch ? refuse({ code: 'too_much_to_go', pieces: inAll }) : ok(pieces);
}

function readPiece(
  line: string,
  unit: LengthSystem,
): PieceToGo | 'parts' | 'name' | 'size' | 'weight' {
  const [name = '', size = '', weight = '', ...more] = line.split(';');
  if (more.length > 0 || weight === '') return 'parts';
  const named = readNamed(name);
  if (!named) return 'name';
  const sides = readSides(size, unit);
  if (!sides) return 'size';
  const weightG = readWeight(weight, unit);
  if (weightG === null || weightG > mostG) return 'weight';
  const [heightUm, widthUm, depthUm] = sides;
  return { ...named, heightUm, widthUm, depthUm, weightG };
}

/** The first number that stands in a list twice; null when none does. */
export function firstTwice(numbers: readonly number[]): number | null {
  const seen = new Set<number>();
  for (const number of numbers) {
    if (seen.has(number)) return number;
    seen.add(number);
  }
  return null;
}

/**
 * What is to go, as {@link readPieces} reads it.
 *
 * @param isWeighed whether weights are known to the gram; a reckoning is written in round figures
 */
export function piecesTyped(
  pieces: readonly PieceToGo[],
  unit: LengthSystem,
  isWeighed = true,
): string {
  const weightOf = (grams: number) =>
    isWeighed ? weightTyped(grams, unit) : formatWeight(grams, weighedIn(unit));
  return pieces
    .map((piece) => {
      const size = sidesTyped([piece.heightUm, piece.widthUm, piece.depthUm], unit);
      return `${namedTyped(piece)}; ${size}; ${weightOf(piece.weightG)}`;
    })
    .join('\n');
}
