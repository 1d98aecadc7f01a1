import type { Actor } from '@/lib/access/rules';
import { undoMoveInput } from '@/lib/studio/input';
import { findMove } from '@/lib/studio/reads/job';
import { JustMoved } from '../../just-moved';

type MovedJustNowProps = Readonly<{
  actor: Actor;
  /** The moves of the last touch, as the address names them. */
  moved: string | string[] | undefined;
  mayMove: boolean;
}>;

/** A touch moves parts from a few places at most. */
const toldMost = 14;

/** What was just moved, a line for each place that parts left, each with its undo. */
export async function MovedJustNow({ actor, moved, mayMove }: MovedJustNowProps) {
  const ids = (typeof moved === 'string' ? moved.split('-') : []).slice(0, toldMost);
  const read = ids.flatMap((id) => undoMoveInput.shape.moveId.safeParse(id).data ?? []);
  const moves = await Promise.all(read.map((id) => findMove(actor, id)));
  return moves.map((move) =>
    move ? <JustMoved key={move.id} move={move} mayMove={mayMove} backTo="parts" /> : null,
  );
}
