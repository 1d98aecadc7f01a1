import { readSku } from '@/lib/catalogue/rules';
import { layReady, type ReadyPiece } from '@/lib/stock/rules/moves/move';
import { statementLinesMost } from '../input';

/** What is with another gallery, as a list of piece numbers is looked up in it. */
export type WithThemNow = { sku: string; numbers: readonly number[] };

/** A list of piece numbers, looked up: what is with them, and what is not by our books. */
export type ToldPieces = { matched: ReadyPiece[]; unmatched: string[] };

/** The longest list that is looked up, in characters. */
export const toldMost = 4_000;

/**
 * Looks a list of piece numbers up in what is with another gallery: one on each line, or parted by
 * commas, with the number of an edition or how many behind it, `HR-14-MO 7` or `FT-06-CI x2`.
 *
 * @returns what matched, each SKU together, at most 60 lines; and every entry that did not, as it
 *   was written
 * @example readTold('FT-06-CI, NO-1-X', there) // one matched; 'NO-1-X' is told
 */
export function readTold(text: string, there: readonly WithThemNow[]): ToldPieces {
  const known = new Map(there.map((piece) => [piece.sku, piece]));
  const entries = text
    .slice(0, toldMost)
    .split(/[\n,;]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
  const unmatched: string[] = [];
  let matched: ReadyPiece[] = [];
  for (const entry of entries) {
    const piece = readEntry(entry, known);
    if (!piece || matched.length >= statementLinesMost) unmatched.push(entry.slice(0, 60));
    else matched = layReady(matched, piece);
  }
  return { matched, unmatched };
}

function readEntry(entry: string, known: ReadonlyMap<string, WithThemNow>): ReadyPiece | null {
  const [, code = '', times, digits] =
    /^(\S+?)(?:\s+(x|×|#|no\.?)?\s*(\d{1,4}))?$/i.exec(entry) ?? [];
  const sku = readSku(code);
  const piece = sku.ok ? known.get(sku.value) : undefined;
  if (!piece) return null;
  const number = digits === undefined ? null : Number(digits);
  if (piece.numbers.length > 0) return numbered(piece, number);
  const isCount = number === null || times === undefined || /^[x×]$/i.test(times);
  return isCount && number !== 0 ? { sku: piece.sku, quantity: number ?? 1, number: null } : null;
}

function numbered(piece: WithThemNow, number: number | null): ReadyPiece | null {
  const only = piece.numbers.length === 1 ? (piece.numbers[0] ?? null) : null;
  const meant = number ?? only;
  if (meant === null || !piece.numbers.includes(meant)) return null;
  return { sku: piece.sku, quantity: 1, number: meant };
}
