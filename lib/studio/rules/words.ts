import { formatCents, type Currency } from '@/lib/money/rules';
import type { BeforeClay, MoveRefusal, UndoRefusal } from '@/lib/studio/rules';

/** Why a job was not opened. */
export type OpenJobRefusal =
  | { code: 'no_such_commission' }
  | { code: 'commission_ended'; commissionNumber: number }
  | { code: 'no_such_piece' };

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
export function moveRefusalMessage(refusal: MoveRefusal): string {
  switch (refusal.code) {
    case 'no_such_job':
      return 'That job is not in the studio’s list.';
    case 'finished_already':
      return 'Those pieces are finished; there is no further step.';
    case 'pieces_have_moved':
      return notThere(refusal, 'Somebody moved them before you.');
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
export function undoRefusalMessage(refusal: UndoRefusal): string {
  switch (refusal.code) {
    case 'no_such_move':
      return 'That move is not in the studio’s list.';
    case 'an_undoing_stays':
      return 'That was a taking back. Move the pieces on again instead.';
    case 'undone_already':
      return 'That move was taken back already.';
    case 'pieces_went_on':
      return notThere(refusal, 'They have gone on meanwhile.');
  }
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
export function openJobRefusalMessage(refusal: OpenJobRefusal): string {
  switch (refusal.code) {
    case 'no_such_commission':
      return 'That commission is not in the book.';
    case 'commission_ended':
      return `Commission ${refusal.commissionNumber} has ended, so no job is opened for it.`;
    case 'no_such_piece':
      return 'That piece is not in the stock list.';
  }
}
