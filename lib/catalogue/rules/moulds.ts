import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';

/** At how much of its life, in a hundred, a mould is spoken of. */
export const wearingPercent = 80;
/** The longest life in casts that a mould can be given. */
export const lifeMost = 5_000;

/** A mould as it is counted: casts it is trusted for, casts it had before, casts since. */
export type MouldCounts = {
  lifeCasts: number;
  begunWith: number;
  castsSince: number;
  retiredOn: Day | null;
};

/** How a mould stands; casts left never fall below nought. */
export type MouldStanding = {
  soFar: number;
  left: number;
  wear: 'good' | 'wearing' | 'worn' | 'retired';
};

/**
 * How many casts a mould has given and has left, and whether it must be spoken of.
 *
 * @source common practice: sharp relief holds for 50 to 100 casts, hollow forms for 100 to 150;
 *   the life is the studio's own number
 * @example mouldStanding({ lifeCasts: 100, begunWith: 60, castsSince: 20, retiredOn: null })
 *   // { soFar: 80, left: 20, wear: 'wearing' }
 */
export function mouldStanding(mould: MouldCounts): MouldStanding {
  const soFar = mould.begunWith + mould.castsSince;
  const left = mould.retiredOn === null ? Math.max(0, mould.lifeCasts - soFar) : 0;
  return { soFar, left, wear: wearOf(mould, soFar) };
}

function wearOf({ lifeCasts, retiredOn }: MouldCounts, soFar: number): MouldStanding['wear'] {
  if (retiredOn !== null) return 'retired';
  if (soFar >= lifeCasts) return 'worn';
  return soFar * 100 >= lifeCasts * wearingPercent ? 'wearing' : 'good';
}

/**
 * What is to be said of a mould; empty while nothing is.
 *
 * @example mouldWarning({ soFar: 80, left: 20, wear: 'wearing' }) // 'Wearing: 20 casts left.'
 */
export function mouldWarning({ left, wear }: MouldStanding): string {
  switch (wear) {
    case 'good':
      return '';
    case 'wearing':
      return `Wearing: ${castsWords(left)} left. Make the next one from its model in time.`;
    case 'worn':
      return 'It has given all the casts that it is trusted for. Look at the edges of each cast.';
    case 'retired':
      return 'Retired: nothing is cast from it any more.';
  }
}

/** `1 cast`, `31 casts`. */
export function castsWords(casts: number): string {
  return casts === 1 ? '1 cast' : `${casts} casts`;
}

/**
 * What an edition says of the mould it comes from, when that will not last.
 *
 * @param edition its size with proofs, and how many numbers have come
 * @returns empty when the mould lasts; spare casts for losses are the studio's to add
 * @example editionOnMould({ pieces: 50, came: 0 }, 31)
 *   // 'An edition of 50 with 50 still to come, from a mould with 31 casts left.'
 */
export function editionOnMould(
  edition: { pieces: number; came: number },
  castsLeft: number,
): string {
  const toCome = Math.max(0, edition.pieces - edition.came);
  if (toCome <= castsLeft) return '';
  return (
    `An edition of ${edition.pieces} with ${toCome} still to come, ` +
    `from a mould with ${castsWords(castsLeft)} left.`
  );
}

/** Why a mould was not written down or used. */
export type MouldRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_design' }
  | { code: 'mould_code_taken' }
  | { code: 'unknown_mould' }
  | { code: 'retired_already'; retiredOn: Day }
  | { code: 'day_to_come' }
  | { code: 'before_it_was_made'; madeOn: Day };

/** Says in a full sentence why a mould was not written down or used. */
export function mouldRefusalMessage(refusal: MouldRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_design':
      return 'That design is not in the catalogue.';
    case 'mould_code_taken':
      return 'Another mould has this code. Give it a number of its own.';
    case 'unknown_mould':
      return 'That mould is not in the list.';
    case 'retired_already':
      return `That mould was retired on ${formatDay(refusal.retiredOn, 'short')}.`;
    case 'day_to_come':
      return 'That day is still to come.';
    case 'before_it_was_made':
      return `The mould was made on ${formatDay(refusal.madeOn, 'short')}, after that day.`;
  }
}
