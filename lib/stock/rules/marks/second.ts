import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { skuLength } from '@/lib/catalogue/rules';
import { pictureRefusalMessage, type PictureRefusal } from '@/lib/files/rules';
import { shareCents, type Cents } from '@/lib/money/rules';
import { numberMessage, type EditionRefusal, type NumberRefusal } from './numbers';

/** What a piece with a flaw is: a second has one, an irregular differs from the standard. */
export type SecondGrade = 'second' | 'irregular';

/** Each grade in words, and what it commonly costs in a hundred of the first. */
export const secondGrades: Readonly<
  Record<SecondGrade, { word: string; does: string; percent: string; suffix: string }>
> = {
  second: { word: 'second', does: 'sound, with a flaw', percent: '50', suffix: '-S' },
  irregular: {
    ...{ word: 'irregular', does: 'differs from the standard', percent: '75', suffix: '-I' },
  },
};

/**
 * What a second costs when nobody says otherwise: half of the first, an irregular three quarters;
 * half a cent goes up.
 *
 * @source common practice: about half off for seconds, a quarter off for irregulars
 * @example secondPriceCents(5_201n, 'second') // 2_601n
 */
export function secondPriceCents(firstCents: Cents, grade: SecondGrade): Cents {
  return shareCents(firstCents, secondGrades[grade].percent, 'half-up');
}

/**
 * The SKU of a second: that of its first with `-S` or `-I` behind it, and a number when that is
 * another flaw's already.
 *
 * @param taken codes that are used, in capitals
 * @example secondCode('TS-10-CI', 'second', new Set(['TS-10-CI-S'])) // 'TS-10-CI-S2'
 */
export function secondCode(
  firstCode: string,
  grade: SecondGrade,
  taken: ReadonlySet<string>,
): string {
  for (let number = 1; ; number += 1) {
    const tail = secondGrades[grade].suffix + (number === 1 ? '' : String(number));
    const head = firstCode.slice(0, skuLength.most - tail.length).replace(/-+$/, '');
    if (!taken.has(head + tail)) return head + tail;
  }
}

/** A flaw as it is compared: capitals, spaces and a full stop do not matter. */
export function sameFlaw(flaw: string): string {
  return flaw.replace(/\s+/g, ' ').trim().replace(/\.$/, '').toLowerCase();
}

/**
 * How a second is told wherever it is seen.
 *
 * @returns empty for a first
 * @example gradeWords({ grade: 'second', flaw: 'pinholes lower left' })
 *   // 'second: pinholes lower left'
 */
export function gradeWords(piece: { grade: 'first' | SecondGrade; flaw: string }): string {
  if (piece.grade === 'first') return '';
  const { word } = secondGrades[piece.grade];
  return piece.flaw === '' ? word : `${word}: ${piece.flaw}`;
}

/** Why pieces were not marked as seconds. */
export type SecondRefusal = PictureRefusal | MarkRefusal;

type MarkRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_piece' }
  | { code: 'second_already' }
  | EditionRefusal
  | Extract<NumberRefusal, { code: 'one_number_at_a_time' | 'number_not_here' }>
  | { code: 'not_enough_here'; onHand: number; held: number };

/** Says in a full sentence why pieces were not marked as seconds. */
export function secondRefusalMessage(refusal: SecondRefusal): string {
  return isOfThePicture(refusal) ? pictureRefusalMessage(refusal) : markMessage(refusal);
}

function isOfThePicture(refusal: SecondRefusal): refusal is PictureRefusal {
  return refusal.code.startsWith('picture_') || refusal.code === 'not_a_picture';
}

function markMessage(refusal: MarkRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_piece':
      return 'This piece is not in the catalogue. Load the page again, please.';
    case 'second_already':
      return 'This is a second already, and it stays one.';
    case 'beyond_edition':
    case 'which_number':
    case 'one_number_at_a_time':
    case 'number_not_here':
      return numberMessage(refusal);
    case 'not_enough_here':
      return notEnoughSentence(refusal);
  }
}

function notEnoughSentence({ onHand, held }: { onHand: number; held: number }): string {
  if (onHand === 0) return 'None are here by our count. If one is, write down the count first.';
  if (held === 0) return `By our count only ${onHand} are here.`;
  return `${onHand} are here, and ${held} of them are held for somebody. Release the hold first.`;
}
