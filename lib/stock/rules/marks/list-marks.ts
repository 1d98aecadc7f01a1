import type { Making } from '@/lib/catalogue/rules/making';
import type { RowFault } from '../list-row';

/** The marks of a piece that no list changes. */
export type KnownMarks = {
  /** How many numbers its edition has left; null or left out for what is no stated edition. */
  numbersLeft?: number | null | undefined;
  isSecond?: boolean | undefined;
  /** Of those that are here, how many are kept back for somebody. */
  held?: number | undefined;
};

type Known = KnownMarks & { here: number };

/**
 * What a line of a stock list would break: the word of an edition, or the mark of a second.
 *
 * @param listed how the piece is made and how many are here, after the line
 * @returns null for nothing; in this order: fewer here than are held for somebody, a second made an edition, a stated edition made
 *   something else, numbers that would be gone without being named, more than the edition has left
 */
export function marksFault(
  listed: { making: Making; here: number },
  known: Known,
): RowFault | null {
  const held = heldFault(listed.here, known);
  if (held) return held;
  if (known.isSecond && listed.making === 'edition') {
    return { column: 'making', sentence: 'A second is no piece of an edition.' };
  }
  const { numbersLeft = null } = known;
  return numbersLeft === null ? null : editionFault(listed, { here: known.here, numbersLeft });
}

function heldFault(here: number, { held = 0, here: before }: Known): RowFault | null {
  if (here >= held || here === before) return null;
  const are = held === 1 ? 'One of them is' : `${held} of them are`;
  return { column: 'here', sentence: `${are} held for somebody; let the hold go first.` };
}

function editionFault(
  listed: { making: Making; here: number },
  { here, numbersLeft }: { here: number; numbersLeft: number },
): RowFault | null {
  if (listed.making !== 'edition') {
    return { column: 'making', sentence: 'Its edition was stated, and stays.' };
  }
  if (listed.here < here) {
    const sentence = 'This is an edition: write down on its page which number is gone.';
    return { column: 'here', sentence };
  }
  if (listed.here <= here + numbersLeft) return null;
  return { column: 'here', sentence: `Its edition has only ${numbersLeft} left to come.` };
}
