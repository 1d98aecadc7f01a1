import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';

/** How many an edition has, as it was stated: its numbers, and behind them its artist's proofs. */
export type EditionSize = { size: number; artistProofs: number };

/** The largest edition that can be stated, in numbers. */
export const editionMost = 1_000;
/** The most artist's proofs that an edition can have. */
export const proofsMost = 50;

/**
 * A number of an edition, as it is written under the piece. Proofs are counted on behind the
 * edition's own numbers.
 *
 * @example editionNumberWords(7, { size: 50, artistProofs: 3 }) // '7/50'
 * @example editionNumberWords(52, { size: 50, artistProofs: 3 }) // 'AP 2/3'
 */
export function editionNumberWords(number: number, edition: EditionSize): string {
  const { size, artistProofs } = edition;
  return number <= size ? `${number}/${size}` : `AP ${number - size}/${artistProofs}`;
}

/**
 * Reads a number of an edition as people write it.
 *
 * @returns the number, proofs counted on behind the edition's own; null for what is no number of
 *   this edition
 * @example readEditionNumber('AP 2/3', { size: 50, artistProofs: 3 }) // 52
 */
export function readEditionNumber(text: string, edition: EditionSize): number | null {
  const read = /^(ap)?\s*(\d{1,4})(?:\s*\/\s*(\d{1,4}))?$/i.exec(text.trim());
  if (!read) return null;
  const [, proof, digits = '', of] = read;
  const most = proof ? edition.artistProofs : edition.size;
  const place = Number(digits);
  if (place < 1 || place > most || (of !== undefined && Number(of) !== most)) return null;
  return proof ? edition.size + place : place;
}

/**
 * Numbers of an edition in one breath, those that follow one another drawn together.
 *
 * @example numbersWords([1, 2, 3, 7, 51], { size: 50, artistProofs: 2 }) // '1–3, 7, AP 1'
 */
export function numbersWords(numbers: readonly number[], edition: EditionSize): string {
  const said = (number: number) =>
    number <= edition.size ? `${number}` : `AP ${number - edition.size}`;
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    const follows = last && last[1] === number - 1 && number !== edition.size + 1;
    if (follows) last[1] = number;
    else runs.push([number, number]);
  }
  return runs
    .map(([from, to]) => (from === to ? said(from) : `${said(from)}–${said(to)}`))
    .join(', ');
}

/** Why an edition was not stated. */
export type StateEditionRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_piece' }
  | { code: 'second_is_no_edition' }
  | { code: 'stated_already'; size: number }
  | { code: 'pieces_came_before' }
  | { code: 'mould_of_another_design' };

/** Says in a full sentence why an edition was not stated. */
export function stateEditionRefusalMessage(refusal: StateEditionRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_piece':
      return 'This piece is not in the catalogue. Load the page again, please.';
    case 'second_is_no_edition':
      return 'A second is no piece of an edition.';
    case 'stated_already':
      return `It was stated as an edition of ${refusal.size}, and that is never changed.`;
    case 'pieces_came_before':
      return 'Pieces of it have come already. An edition is stated before its first piece comes.';
    case 'mould_of_another_design':
      return 'That is no working mould of this design.';
  }
}
