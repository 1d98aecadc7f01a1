import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { JobStanding } from '@/lib/studio/reads/standing';
import { beginSpare } from '../actions';

/** Begins a few more of the same, before the kiln tells how many come out. */
export function SpareOnes({ job }: Readonly<{ job: JobStanding }>) {
  return (
    <details>
      <summary>Begin spare ones besides</summary>
      <FormFrame action={beginSpare} label="Begin spare ones" layout="row">
        <RequestKey />
        <input type="hidden" name="jobId" value={job.id} />
        <Field name="pieces" label="How many more" kind="count" width="short" size="counter" />
        <SubmitButton variant="quiet" size="counter" pendingText="Beginning…">
          Begin them
        </SubmitButton>
      </FormFrame>
    </details>
  );
}
