import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { daysBetween, formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Currency } from '@/lib/money/rules';
import type {
  BeforeClay,
  LeaveRefusal,
  LossRefusal,
  MoveRefusal,
  UndoRefusal,
} from '@/lib/studio/rules';

/** Why a job was not opened. */
export type OpenJobRefusal =
  | { code: 'no_such_commission' }
  | { code: 'commission_ended'; commissionNumber: number }
  | { code: 'no_such_piece' }
  | { code: 'no_such_route' };

/** Why nothing happened, whatever it was: no leave, or a form that was sent before. */
export type AnyRefusal = NotAllowed | { code: 'key_used_for_something_else' };

/** `1 piece`, `24 pieces`. */
export function piecesWords(pieces: number): string {
  return pieces === 1 ? '1 piece' : `${pieces} pieces`;
}

/** What the button says that moves them: `Move 24 on to drying`. */
export function moveOnWords(pieces: number, toName: string): string {
  if (toName === 'finished') return pieces === 1 ? 'It is finished' : `All ${pieces} are finished`;
  return pieces === 1 ? `Move it on to ${toName}` : `Move ${pieces} on to ${toName}`;
}

/**
 * What is said after pieces were moved: `24 pieces moved to drying.`
 *
 * @param toName a step's name, `finished`, or `not begun` after an undo of the first move
 */
export function movedWords(pieces: number, toName: string): string {
  const are = pieces === 1 ? 'is' : 'are';
  if (toName === 'finished') return `${piecesWords(pieces)} ${are} finished.`;
  if (toName === 'not begun') return `${piecesWords(pieces)} ${are} not begun again.`;
  return `${piecesWords(pieces)} moved to ${toName}.`;
}

/** What is said after a move was taken back: `24 pieces are back at drying.` */
export function undoneWords(pieces: number, toName: string): string {
  if (toName === 'not begun') return movedWords(pieces, toName);
  return `${piecesWords(pieces)} ${pieces === 1 ? 'is' : 'are'} back at ${toName}.`;
}

/**
 * What a commission's clay waits for, as the end of a sentence.
 *
 * @param depositLeftCents what of the deposit is still to come; null when nobody may see money
 * @example beforeClayWords(['colours', 'deposit'], 45_000n)
 *   // 'the yes to its colours and $450.00 of the deposit'
 */
export function beforeClayWords(
  missing: readonly BeforeClay[],
  depositLeftCents: bigint | null,
  currency: Currency = 'USD',
): string {
  const words = missing.map((one) => {
    switch (one) {
      case 'agreement':
        return 'the agreement';
      case 'sketch':
        return 'the yes to a sketch';
      case 'colours':
        return 'the yes to its colours';
      case 'days_to_cancel':
        return 'the days in which the collector may cancel';
      case 'deposit':
        return depositLeftCents === null || depositLeftCents === 0n
          ? 'the deposit'
          : `${formatCents(depositLeftCents, { currency })} of the deposit`;
    }
  });
  const last = words.at(-1) ?? 'nothing';
  return words.length > 1 ? `${words.slice(0, -1).join(', ')} and ${last}` : last;
}

/** Says why pieces were not moved. */
export function moveRefusalMessage(refusal: MoveRefusal | AnyRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
    case 'key_used_for_something_else':
      return anyRefusalMessage(refusal);
    case 'no_such_job':
      return 'That job is not in the studio’s list.';
    case 'finished_already':
      return 'Those pieces are finished; there is no further step.';
    case 'edition_is_full':
      return refusal.words;
    case 'pieces_have_moved':
    case 'in_a_lit_kiln':
    case 'say_which_parts':
    case 'parts_do_not_fit':
      return leaveMessage(refusal);
    case 'commission_ended':
      return `Commission ${refusal.commissionNumber} has ended, so its clay is not begun.`;
    case 'making_not_yet': {
      const waits = beforeClayWords(refusal.missing, refusal.depositLeftCents);
      return (
        `The clay of commission ${refusal.commissionNumber} waits for ${waits}. ` +
        'The owner can let it begin all the same, and says why on its sheet.'
      );
    }
  }
}

/** Says why a move was not taken back. */
export function undoRefusalMessage(refusal: UndoRefusal | AnyRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
    case 'key_used_for_something_else':
      return anyRefusalMessage(refusal);
    case 'no_such_move':
      return 'That move is not in the studio’s list.';
    case 'an_undoing_stays':
      return 'That was a taking back. Move the pieces on again instead.';
    case 'undone_already':
      return 'That move was taken back already.';
    case 'pieces_went_on':
      return notThere(refusal, 'They have gone on meanwhile.');
    case 'sold_meanwhile':
      return `${refusal.title} was sold, held or moved meanwhile, so it stays in stock.`;
    case 'numbered_already':
      return `${refusal.title} has its number of the edition. Correct the stock instead.`;
  }
}

/** Says why a loss was not written down. */
export function lossRefusalMessage(refusal: LossRefusal | AnyRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
    case 'key_used_for_something_else':
      return anyRefusalMessage(refusal);
    case 'no_such_job':
      return 'That job is not in the studio’s list.';
    case 'not_begun':
      return 'Pieces that were never begun are not lost. Move them on first.';
    case 'in_stock_already':
      return 'Those pieces are in stock. What breaks there is written down in the stock room.';
    case 'say_what':
      return 'Say in a few words what happened.';
    case 'pieces_have_moved':
    case 'in_a_lit_kiln':
    case 'say_which_parts':
    case 'parts_do_not_fit':
      return leaveMessage(refusal);
  }
}

function leaveMessage(refusal: Exclude<LeaveRefusal, { code: 'no_such_job' }>): string {
  switch (refusal.code) {
    case 'pieces_have_moved':
      return notThere(refusal, 'Somebody moved them before you.');
    case 'in_a_lit_kiln':
      return (
        `${piecesWords(refusal.burning)} at ${refusal.from} ` +
        `${refusal.burning === 1 ? 'is' : 'are'} in a kiln that was lit. Open it on its own page.`
      );
    case 'say_which_parts':
      return 'Its parts have numbers. Say on the numbered drawing which of them are meant.';
    case 'parts_do_not_fit':
      return `Some of those parts do not stand at ${refusal.from} any more. Choose again.`;
  }
}

function anyRefusalMessage(refusal: AnyRefusal): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  return 'This page was sent before with something else in it. Load it again, please.';
}

function notThere(
  { from, standing, wanted }: { from: string; standing: number; wanted: number },
  why: string,
): string {
  const where = from === 'not begun' ? 'are still to begin' : `stand at ${from}`;
  if (standing === 0) {
    const verb = from === 'not begun' ? 'is left to begin' : `stands at ${from} any more`;
    return `No piece ${verb}. ${why}`;
  }
  const one = standing === 1 ? where.replace(/^are/, 'is').replace(/^stand/, 'stands') : where;
  return `Only ${standing} of the ${wanted} ${one}. ${why}`;
}

/** Says why a job was not opened. */
export function openJobRefusalMessage(refusal: OpenJobRefusal | AnyRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
    case 'key_used_for_something_else':
      return anyRefusalMessage(refusal);
    case 'no_such_commission':
      return 'That commission is not in the book.';
    case 'commission_ended':
      return `Commission ${refusal.commissionNumber} has ended, so no job is opened for it.`;
    case 'no_such_piece':
      return 'That piece is not in the stock list.';
    case 'no_such_route':
      return 'That way is no longer in the list. Choose another.';
  }
}

/**
 * Since when pieces stand where they stand: `since today`, `since yesterday`,
 * `since 4 May, 9 days`.
 *
 * @returns `not begun yet` for pieces that never moved
 */
export function sinceWords(sinceOn: Day | null, todayOn: Day): string {
  if (sinceOn === null) return 'not begun yet';
  const days = Math.max(0, daysBetween(sinceOn, todayOn));
  if (days === 0) return 'since today';
  if (days === 1) return 'since yesterday';
  return `since ${shortDay(sinceOn, todayOn)}, ${days} days`;
}

/** A day without its year when it lies in the same year: `4 May`, `4 May 2025`. */
export function shortDay(day: Day, todayOn: Day): string {
  const words = formatDay(day, 'short');
  return day.slice(0, 4) === todayOn.slice(0, 4) ? words.replace(/ \d{4}$/, '') : words;
}

/** How long a step commonly takes: `5 to 14 days, most often 10`, `1 day`. */
export function stepDaysWords(step: {
  shortestDays: number;
  likelyDays: number;
  longestDays: number;
}): string {
  const { shortestDays, likelyDays, longestDays } = step;
  if (shortestDays === longestDays) return longestDays === 1 ? '1 day' : `${longestDays} days`;
  const span = `${shortestDays} to ${longestDays} days`;
  return likelyDays === longestDays ? span : `${span}, most often ${likelyDays}`;
}

/** When a job should be ready: `about 12 June; 3 June at the earliest, 30 June at the latest`. */
export function readyWords(
  ready: { shortestOn: Day; likelyOn: Day; longestOn: Day },
  todayOn: Day,
): string {
  const { shortestOn, likelyOn, longestOn } = ready;
  return (
    `about ${shortDay(likelyOn, todayOn)}; ${shortDay(shortestOn, todayOn)} at the earliest, ` +
    `${shortDay(longestOn, todayOn)} at the latest`
  );
}
