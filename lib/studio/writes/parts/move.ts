import 'server-only';
import { allow, isAllowed, type Doer, type NotAllowed } from '@/lib/access/rules';
import { onceOnly, type KeyRefusal } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { LosePartsInput, MovePartsInput } from '@/lib/studio/input/parts';
import type { LossRefusal, MoveRefusal } from '@/lib/studio/rules';
import type { PartsRefusal } from '@/lib/studio/rules/parts/words';
import type { Moved } from '../jobs/keep-move';
import { losePieces } from '../jobs/losing';
import { movePieces } from '../jobs/moving';
import { byPosition, loadChosen } from './chosen';

/** What happened to chosen parts: a move for each place that some of them left. */
export type PartsMoved = { moves: Moved[] };

/**
 * Moves chosen parts of a job, each to the step after the one at which it stands.
 *
 * Who may not see money is told of a missing deposit without its amount.
 *
 * @returns refuses, in this order: not allowed, then as {@link loadChosen}, then as `movePieces`
 */
export async function movePartsOn(
  doer: Doer,
  input: MovePartsInput,
): Promise<Result<PartsMoved, NotAllowed | PartsRefusal | MoveRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'movePartsOn', input);
  const moved = await onceOnly<PartsMoved, PartsRefusal | MoveRefusal>(command, async (tx) => {
    const chosen = await loadChosen(tx, input);
    if (!chosen.ok) return chosen;
    const moves: Moved[] = [];
    for (const { fromPosition, partIds } of byPosition(chosen.value)) {
      const pieces = partIds.length;
      const one = await movePieces(tx, doer, { jobId: input.jobId, fromPosition, pieces, partIds });
      if (!one.ok) return one;
      moves.push(one.value);
    }
    return ok({ moves });
  });
  return moved.ok ? moved : refuse(asMayBeTold(doer, moved.refusal));
}

function asMayBeTold<Refusal extends { code: string }>(doer: Doer, refusal: Refusal): Refusal {
  if (!('depositLeftCents' in refusal)) return refusal;
  if (isAllowed(doer.actor.roles, 'commissions.see_money')) return refusal;
  return { ...refusal, depositLeftCents: null };
}

/** Chosen parts that were written down as lost, and how many were begun anew for them. */
export type PartsLost = PartsMoved & { begunAnew: number };

/**
 * Writes chosen parts down as lost, all for one reason. A number of which nothing else is left is
 * begun anew at once.
 *
 * @returns refuses, in this order: not allowed, something else without a word of what, then as
 *   {@link loadChosen}, then as `losePieces`
 */
export async function loseParts(
  doer: Doer,
  input: LosePartsInput,
): Promise<Result<PartsLost, NotAllowed | PartsRefusal | LossRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { jobId, cause, note } = input;
  if (cause === 'other' && note === '') return refuse({ code: 'say_what' });
  const command = commandOf(doer, 'loseParts', input);
  return onceOnly<PartsLost, PartsRefusal | LossRefusal>(command, async (tx) => {
    const chosen = await loadChosen(tx, input);
    if (!chosen.ok) return chosen;
    const moves: Moved[] = [];
    let begunAnew = 0;
    for (const { fromPosition, partIds } of byPosition(chosen.value)) {
      const losing = { jobId, fromPosition, pieces: partIds.length, partIds, cause, note };
      const lost = await losePieces(tx, doer, losing);
      if (!lost.ok) return lost;
      const { begunAnew: anew, ...move } = lost.value;
      begunAnew += anew;
      moves.push(move);
    }
    return ok({ moves, begunAnew });
  });
}

function commandOf(doer: Doer, name: string, { requestKey, ...input }: MovePartsInput) {
  return { key: requestKey, name, staffId: doer.actor.id, input, at: doer.at };
}
