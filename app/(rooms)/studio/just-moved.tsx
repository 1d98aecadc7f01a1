import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { MoveJustMade } from '@/lib/studio/reads/job';
import { begunAnewWords, lostWords, movedWords, undoneWords } from '@/lib/studio/rules/words';
import { takeBack } from './actions';
import css from './studio.module.css';

type JustMovedProps = Readonly<{
  move: MoveJustMade;
  mayMove: boolean;
  backTo: 'bench' | 'job' | 'parts';
}>;

/** What was just moved, in a sentence, with its undo right beside it. */
export function JustMoved({ move, mayMove, backTo }: JustMovedProps) {
  const said = saidOf(move);
  return (
    <aside className={css['just-moved']} aria-label="What was just moved">
      <p role="status">
        <span className="work-title">{move.jobTitle}</span>: {said}
        {move.isUndone ? ' This was taken back since.' : null}
      </p>
      {mayMove && !move.isUndoing && !move.isUndone ? (
        <FormFrame action={takeBack} label="Take back what was just moved">
          <RequestKey />
          <input type="hidden" name="moveId" value={move.id} />
          <input type="hidden" name="backTo" value={backTo} />
          <SubmitButton variant="quiet" size="counter" pendingText="Taking it back…">
            Undo
          </SubmitButton>
        </FormFrame>
      ) : null}
    </aside>
  );
}

function saidOf(move: MoveJustMade): string {
  if (move.isUndoing) return undoneWords(move.pieces, move.toName);
  if (move.cause) return lostWords(move.pieces, move.cause, move.begunAnew);
  if (move.isBegunAnew) return begunAnewWords(move.pieces);
  const moved = movedWords(move.pieces, move.toName);
  return move.intoStock === null ? moved : `${moved} They are in stock: ${move.intoStock}.`;
}
