import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import type { LeaveRefusal, LossRefusal, MoveRefusal, UndoRefusal } from '@/lib/studio/rules';
import { beforeClayWords, piecesWords } from './words';

/** Why a job was not opened. */
export type OpenJobRefusal =
  | { code: 'no_such_commission' }
  | { code: 'commission_ended'; commissionNumber: number }
  | { code: 'no_such_piece' }
  | { code: 'no_such_route' };

/** Why nothing happened, whatever it was: no leave, or a form that was sent before. */
export type AnyRefusal = NotAllowed | { code: 'key_used_for_something_else' };

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
