import type { Cents } from '@/lib/money/rules';
import { invariant } from '@/lib/platform/invariant';
import type { ReturnRefusal } from './refusals';
import { shareOfLine } from './shares';
import { leftOf, numbersLeft, type ReturnedTo, type SoldLine, type SoldSale } from './sold';

/** A line of the sale of which pieces come back. */
export type AskedLine = {
  lineId: string;
  /** At least one. */
  pieces: number;
  /** Which numbers of an edition; as many as pieces. Empty for anything else. */
  numbers: readonly number[];
  to: ReturnedTo;
  /** What is wrong with it, for a piece that becomes a second. */
  flaw: string;
};

/** Pieces that come back, with what goes back for them. A numbered piece has a line of its own. */
export type DecidedLine = {
  line: SoldLine;
  pieces: number;
  editionNumber: number | null;
  to: ReturnedTo;
  flaw: string;
  netCents: Cents;
  taxCents: Cents;
};

/** Everything that a sale sold, as it goes back when the sale is struck out. */
export function linesOfVoid(sale: SoldSale): AskedLine[] {
  return sale.lines
    .filter((line) => leftOf(line) > 0)
    .map((line) => ({
      ...{ lineId: line.id, pieces: leftOf(line), numbers: numbersLeft(line), flaw: '' },
      to: line.kind === 'piece' ? 'shelf' : 'nothing',
    }));
}

/**
 * Whether a line can come back as it was asked.
 *
 * @returns null, or the first that stands against it: not of the sale, more than are out, a number
 *   that is missing or not out, what becomes of it unsaid, a flaw unsaid, a second already
 */
export function checkLine(sale: SoldSale, asked: AskedLine): ReturnRefusal | null {
  const line = sale.lines.find((each) => each.id === asked.lineId);
  if (!line) return { code: 'unknown_line' };
  const { id: lineId, title } = line;
  const left = leftOf(line);
  if (asked.pieces < 1 || asked.pieces > left) {
    return { code: 'not_so_many', lineId, title, left };
  }
  return numberRefusal(line, asked) ?? placeRefusal(line, asked);
}

function numberRefusal(line: SoldLine, asked: AskedLine): ReturnRefusal | null {
  const { id: lineId, title } = line;
  if (line.numbers.length === 0) return null;
  const chosen = [...new Set(asked.numbers)];
  const out = numbersLeft(line);
  const wrong = chosen.find((number) => !out.includes(number));
  if (wrong !== undefined) return { code: 'number_not_sold', lineId, title, number: wrong };
  return chosen.length === asked.pieces ? null : { code: 'number_missing', lineId, title };
}

function placeRefusal(line: SoldLine, asked: AskedLine): ReturnRefusal | null {
  const { id: lineId, title } = line;
  if (line.kind !== 'piece') {
    return asked.to === 'nothing' ? null : { code: 'not_a_place', lineId, title };
  }
  if (asked.to !== 'second') return null;
  if (line.isSecond) return { code: 'second_already', lineId, title };
  return asked.flaw.trim() === '' ? { code: 'flaw_missing', lineId, title } : null;
}

/** The pieces of a checked line with their part of its price and tax; numbers one by one. */
export function splitLine(sale: SoldSale, asked: AskedLine): DecidedLine[] {
  const line = sale.lines.find((each) => each.id === asked.lineId);
  invariant(line, 'A line that was checked is of the sale.');
  const { to, flaw } = asked;
  if (line.numbers.length === 0) {
    const share = shareOfLine(line, asked.pieces);
    return [{ line, pieces: asked.pieces, editionNumber: null, to, flaw, ...share }];
  }
  const numbers = [...new Set(asked.numbers)].toSorted((a, b) => a - b);
  let rest = line;
  return numbers.map((editionNumber) => {
    const share = shareOfLine(rest, 1);
    const { back } = rest;
    rest = {
      ...rest,
      back: {
        quantity: back.quantity + 1,
        netCents: back.netCents + share.netCents,
        taxCents: back.taxCents + share.taxCents,
        numbers: [...back.numbers, editionNumber],
      },
    };
    return { line, pieces: 1, editionNumber, to, flaw, ...share };
  });
}
