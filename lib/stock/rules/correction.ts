import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { numberMessage, type EditionRefusal, type NumberRefusal } from './marks/numbers';

/** What a person can say happened to pieces, besides a sale. */
export const correctionReasons = ['made', 'broken', 'missing', 'counted'] as const;

/** One of the {@link correctionReasons}. */
export type CorrectionReason = (typeof correctionReasons)[number];

/** Why a correction was not written down. */
export type CorrectionRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_piece' }
  | EditionRefusal
  | NumberRefusal
  | { code: 'no_pieces' }
  | { code: 'fewer_here'; onHand: number }
  | { code: 'held_for_somebody'; held: number }
  | { code: 'count_agrees'; onHand: number };

/**
 * How many pieces come (above zero) or go (below) when someone says what happened.
 *
 * @param said the reason, and how many pieces; for `counted`, how many are here now
 * @param onHand how many were thought to be here
 * @param held of those, how many are kept back for somebody: they do not vanish unseen
 * @returns refuses, in this order: none for anything but a count, more broken or missing than are
 *   here, a count that agrees, fewer left than are held
 * @example decideCorrection({ reason: 'counted', pieces: 3 }, 5) // -2
 */
export function decideCorrection(
  said: { reason: CorrectionReason; pieces: number },
  onHand: number,
  held = 0,
): Result<number, CorrectionRefusal> {
  const { reason, pieces } = said;
  if (reason === 'counted') {
    if (pieces === onHand) return refuse({ code: 'count_agrees', onHand });
    return pieces < held ? refuse({ code: 'held_for_somebody', held }) : ok(pieces - onHand);
  }
  if (pieces === 0) return refuse({ code: 'no_pieces' });
  if (reason === 'made') return ok(pieces);
  if (pieces > onHand) return refuse({ code: 'fewer_here', onHand });
  return pieces > onHand - held ? refuse({ code: 'held_for_somebody', held }) : ok(-pieces);
}

/** Says in a full sentence why a correction was not written down. */
export function correctionRefusalMessage(refusal: CorrectionRefusal): string {
  return isOfItsNumber(refusal) ? numberMessage(refusal) : correctionMessage(refusal);
}

function isOfItsNumber(refusal: CorrectionRefusal): refusal is EditionRefusal | NumberRefusal {
  return /number|edition/.test(refusal.code);
}

type OtherRefusal = Exclude<CorrectionRefusal, EditionRefusal | NumberRefusal>;

function correctionMessage(refusal: OtherRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_piece':
      return 'This piece is not in the catalogue. Load the page again, please.';
    case 'no_pieces':
      return 'Write how many pieces; at least one.';
    case 'fewer_here':
      return refusal.onHand === 0
        ? 'None are here by our count. If one was, write down the count first.'
        : `By our count only ${refusal.onHand} are here.`;
    case 'held_for_somebody':
      return refusal.held === 1
        ? 'One of them is held for somebody. Call them and let the hold go first.'
        : `${refusal.held} of them are held for somebody. Call them and let the holds go first.`;
    case 'count_agrees':
      return `That is what we thought: ${refusal.onHand} here. There is nothing to write down.`;
  }
}
