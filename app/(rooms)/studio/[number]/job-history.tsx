import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { daysBetween, type Day } from '@/lib/dates/rules';
import { outside, placeName } from '@/lib/studio/rules';
import type { JobTold, MoveTold } from '@/lib/studio/reads/job';
import { begunAnewWords, lostWords, movedWords, undoneWords } from '@/lib/studio/rules/words';
import { takeBack } from '../actions';
import css from '../studio.module.css';

type JobHistoryProps = Readonly<{
  job: JobTold;
  todayOn: Day;
  zone: string;
  mayMove: boolean;
}>;

/** A move is offered for taking back for a week; after that, pieces go on or stay. */
const undoDays = 7;

/** Who moved what when, the last move first; a move can be taken back while its pieces stand there. */
export function JobHistory({ job, todayOn, zone, mayMove }: JobHistoryProps) {
  return (
    <Section title="Who moved what when">
      <ol className={css['history']}>
        {job.told.map((move) => (
          <li key={move.id} data-undone={move.isUndone || undefined}>
            <p>
              {sentenceOf(job, move)}
              {move.isUndone ? ' (taken back)' : null}
            </p>
            <p className={css['since']}>
              {move.by}, <InstantText at={move.at} zone={zone} />
            </p>
            {mayMove && canTakeBack(job, move, todayOn) ? (
              <TakeBack moveId={move.id} said={sentenceOf(job, move)} />
            ) : null}
          </li>
        ))}
        <li>
          <p>The job was opened.</p>
          <p className={css['since']}>
            {job.openedBy}, <InstantText at={job.openedAt} zone={zone} />
          </p>
        </li>
      </ol>
    </Section>
  );
}

function sentenceOf(job: JobTold, move: MoveTold): string {
  const to = placeName(job, move.toPosition);
  if (move.isUndoing) return undoneWords(move.pieces, to);
  if (move.cause) return [lostWords(move.pieces, move.cause, 0), move.note].join(' ').trim();
  if (move.fromPosition === outside) return begunAnewWords(move.pieces);
  const from = move.firingNumber === null ? '' : ` Firing ${move.firingNumber}.`;
  return `${movedWords(move.pieces, to)}${from}`;
}

/** Its pieces must still stand where they went; the write decides again. */
function canTakeBack(job: JobTold, move: MoveTold, todayOn: Day): boolean {
  if (move.isUndoing || move.isUndone) return false;
  if (daysBetween(move.movedOn, todayOn) > undoDays) return false;
  if (move.toPosition === outside) return true;
  const here = job.standings.find((standing) => standing.position === move.toPosition);
  return (here?.free ?? 0) >= move.pieces;
}

function TakeBack({ moveId, said }: Readonly<{ moveId: string; said: string }>) {
  return (
    <FormFrame action={takeBack} label={`Take back: ${said}`}>
      <RequestKey />
      <input type="hidden" name="moveId" value={moveId} />
      <input type="hidden" name="backTo" value="job" />
      <SubmitButton variant="quiet" pendingText="Taking it back…">
        Undo
      </SubmitButton>
    </FormFrame>
  );
}
