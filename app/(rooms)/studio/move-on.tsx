import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { JobStanding, StandingHere } from '@/lib/studio/reads/standing';
import { moveOnWords } from '@/lib/studio/rules/words';
import { moveOn } from './actions';
import css from './studio.module.css';

type MoveOnProps = Readonly<{ job: JobStanding; here: StandingHere }>;

/** One touch moves all pieces of a job that stand here on to the next step. */
export function MoveAllOn({ job, here }: MoveOnProps) {
  if (here.nextName === null || here.free === 0) return null;
  return (
    <FormFrame
      action={moveOn}
      label={`Job ${job.number}, ${job.title}: ${here.name}`}
      className={css['move']}
    >
      <MoveFields job={job} here={here} backTo="bench" />
      <input type="hidden" name="pieces" value={here.free} />
      <SubmitButton variant="quiet" size="counter" wide pendingText="Moving…">
        {moveOnWords(here.free, here.nextName)}
      </SubmitButton>
    </FormFrame>
  );
}

/** Moves all or only some of the pieces that stand here; how many is written, all to begin with. */
export function MoveSomeOn({ job, here }: MoveOnProps) {
  if (here.nextName === null) return null;
  const to = here.nextName === 'finished' ? 'to the finished ones' : `on to ${here.nextName}`;
  return (
    <FormFrame action={moveOn} label={`${here.name}: move on`} layout="row">
      <MoveFields job={job} here={here} backTo="job" />
      <Field
        name="pieces"
        label="How many"
        kind="count"
        width="short"
        size="counter"
        defaultValue={String(here.free)}
      />
      <SubmitButton size="counter" pendingText="Moving…">
        {`Move ${to}`}
      </SubmitButton>
    </FormFrame>
  );
}

function MoveFields({ job, here, backTo }: MoveOnProps & Readonly<{ backTo: 'bench' | 'job' }>) {
  return (
    <>
      <RequestKey />
      <input type="hidden" name="jobId" value={job.id} />
      <input type="hidden" name="fromPosition" value={here.position} />
      <input type="hidden" name="backTo" value={backTo} />
    </>
  );
}
