import { ok, refuse, type Result } from '@/lib/platform/result';
import { skuLength } from '../rules';

/** Pieces as they were scanned or written: by SKU or barcode, an edition's by its number. */
export type TypedPiece = {
  /** In capitals. */
  code: string;
  /** Which of its edition; then the quantity is one. */
  number: number | null;
  quantity: number;
};

/** The most lines that a list may have, and the most pieces that one of them may say. */
export const typedMost = { lines: 300, quantity: 999, characters: 12_000 } as const;

/** Why a list of pieces was not read. */
export type TypedPiecesRefusal =
  | { code: 'nothing_typed' }
  | { code: 'too_many_lines'; most: number }
  | { code: 'not_a_piece'; line: number; text: string }
  | { code: 'too_many_of_one'; line: number; most: number }
  | { code: 'number_twice'; text: string };

/**
 * Reads a list of pieces, one in each line, as a scanner writes it: `TS-10-CI`. A count may stand
 * behind it, `TS-10-CI 3` or `TS-10-CI × 3`; the number of an edition follows a sign, `FN-12#4`.
 * The same piece twice counts twice.
 *
 * @returns in order of first appearance; refuses, in this order: nothing typed, too many lines, a
 *   line that names no piece, a count of nought or beyond 999, one number of an edition twice
 * @example readTypedPieces('ts-10-ci\nts-10-ci 2') // TS-10-CI, three of them
 */
export function readTypedPieces(text: string): Result<TypedPiece[], TypedPiecesRefusal> {
  const lines = text
    .split(/[\r\n;,]+/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (lines.length === 0) return refuse({ code: 'nothing_typed' });
  const { lines: most } = typedMost;
  if (lines.length > most) return refuse({ code: 'too_many_lines', most });

  const pieces = new Map<string, TypedPiece>();
  for (const [at, line] of lines.entries()) {
    const read = readLine(line, at + 1);
    if (!read.ok) return read;
    const { code, number, quantity } = read.value;
    const key = number === null ? code : `${code}#${number}`;
    const before = pieces.get(key);
    if (before && number !== null) return refuse({ code: 'number_twice', text: key });
    const together = (before?.quantity ?? 0) + quantity;
    if (together > typedMost.quantity) return tooMany(at + 1);
    pieces.set(key, { code, number, quantity: together });
  }
  return ok([...pieces.values()]);
}

const pieceLine =
  /^([A-Z0-9]+(?:-[A-Z0-9]+)*)(?:\s*#\s*(\d{1,5}))?(?:\s*[X×*]\s*(\d{1,6})|\s+(\d{1,6}))?$/;

function readLine(line: string, at: number): Result<TypedPiece, TypedPiecesRefusal> {
  const [, code = '', hash, times, count] = pieceLine.exec(line.toUpperCase()) ?? [];
  const number = hash === undefined ? null : Number(hash);
  const quantity = Number(times ?? count ?? '1');
  if (!isCodeLong(code) || (number !== null && (number < 1 || quantity !== 1))) {
    return refuse({ code: 'not_a_piece', line: at, text: line.slice(0, 40) });
  }
  if (quantity < 1 || quantity > typedMost.quantity) return tooMany(at);
  return ok({ code, number, quantity });
}

function isCodeLong({ length }: string): boolean {
  return length >= skuLength.least && length <= skuLength.most;
}

function tooMany(line: number) {
  return refuse({ code: 'too_many_of_one', line, most: typedMost.quantity } as const);
}

/** Says in a full sentence why a list of pieces was not read. */
export function typedPiecesMessage(refusal: TypedPiecesRefusal): string {
  switch (refusal.code) {
    case 'nothing_typed':
      return 'Scan a tag, or write one SKU in each line, such as TS-10-CI.';
    case 'too_many_lines':
      return `At most ${refusal.most} lines at once; the rest in a second list.`;
    case 'not_a_piece':
      return (
        `“${refusal.text}” in line ${refusal.line} does not read as a piece. Write the SKU, and ` +
        'the count behind it: TS-10-CI 3, or for an edition TS-10-CI#4.'
      );
    case 'too_many_of_one':
      return `Line ${refusal.line}: write a count from 1 to ${refusal.most}.`;
    case 'number_twice':
      return `${refusal.text} stands there twice, and it exists once.`;
  }
}
