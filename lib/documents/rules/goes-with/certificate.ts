import { editionNumberWords, type EditionSize } from '@/lib/catalogue/rules/edition';
import { formatDay, type Day } from '@/lib/dates/rules';

/** What a certificate can be told of an edition. */
export type EditionTold = EditionSize & {
  readonly statedOn: Day;
  /** How many have come so far, proofs among them. */
  readonly came: number;
};

/** How many there are of a piece: a single one, one of an edition, or as many as are asked for. */
export type HowMany =
  | { readonly kind: 'one' }
  | { readonly kind: 'edition'; readonly number: number; readonly edition: EditionTold }
  | { readonly kind: 'open' };

/**
 * How many there are of it, in sentences that stay true.
 *
 * @source common practice; what has to be disclosed of multiples is the law of the place
 * @example howManySentences({ kind: 'edition', number: 7, edition }) // ['Number 7/50.', …]
 */
export function howManySentences(many: HowMany): string[] {
  if (many.kind === 'one') return ['One of a kind.'];
  if (many.kind === 'open') return ['One of an open series: more may be made of it.'];
  const { number, edition } = many;
  const { size, artistProofs, statedOn, came } = edition;
  const proofs =
    artistProofs === 0
      ? 'no artist’s proofs'
      : `${artistProofs} artist’s proof${artistProofs === 1 ? '' : 's'}`;
  return [
    `Number ${editionNumberWords(number, edition)}.`,
    `The edition was stated on ${formatDay(statedOn, 'long')} as ${size} and ${proofs}; ${came} of them have been made so far.`,
  ];
}

/**
 * The line about rights, as it is usual at the foot of a certificate.
 *
 * @source 17 U.S.C. § 202 for the United States, from memory: who owns the object does not own the copyright by that
 */
export function rightsSentence(artist: string, year: number | null): string {
  return `© ${year === null ? '' : `${year} `}${artist}. Owning the piece does not carry the right to copy it.`;
}
