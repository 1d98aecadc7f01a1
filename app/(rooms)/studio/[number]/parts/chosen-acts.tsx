'use client';

import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { Day } from '@/lib/dates/rules';
import type { Bucket } from '@/lib/studio/reads/parts/map';
import { lossCauses, lossCauseWords } from '@/lib/studio/rules/jobs/losing';
import { glazeChosen, loseChosen, moveChosenOn } from './actions';
import css from './parts.module.css';

/** What acts on parts need to know besides which. */
export type ActsShared = Readonly<{
  jobId: string;
  buckets: readonly Bucket[];
  todayOn: Day;
}>;

type ChosenActsProps = ActsShared &
  Readonly<{
    partIds: readonly string[];
    /** Names them: `part 12`, `5 parts`. */
    named: string;
    /** Where they go next; null when they are finished. */
    nextName: string | null;
    /** Nothing is lost or glazed that is not begun. */
    isBegun: boolean;
  }>;

/** What can be done with chosen parts: moved on, glazed, written down as lost. */
export function ChosenActs(props: ChosenActsProps) {
  const { named, nextName, isBegun } = props;
  return (
    <div className={css['acts']}>
      {nextName === null ? null : (
        <FormFrame action={moveChosenOn} label={`Move ${named} on`}>
          <Which {...props} />
          <SubmitButton size="counter" wide pendingText="Moving…">
            {nextName === 'finished' ? `Finished: ${named}` : `Move ${named} on to ${nextName}`}
          </SubmitButton>
        </FormFrame>
      )}
      {isBegun ? (
        <>
          <Glazed {...props} />
          <Lost {...props} />
        </>
      ) : null}
    </div>
  );
}

function Which({ jobId, partIds }: Pick<ChosenActsProps, 'jobId' | 'partIds'>) {
  return (
    <>
      <RequestKey />
      <input type="hidden" name="jobId" value={jobId} />
      <input type="hidden" name="partIds" value={partIds.join(',')} />
    </>
  );
}

function Glazed(props: ChosenActsProps) {
  const { named, buckets, todayOn } = props;
  if (buckets.length === 0) return null;
  return (
    <details>
      <summary>Glaze was laid on {named}</summary>
      <FormFrame action={glazeChosen} label={`Glaze on ${named}`}>
        <Which {...props} />
        <Field
          name="batchId"
          label="From which bucket"
          kind="select"
          size="counter"
          options={[{ value: '', label: 'Choose a bucket' }, ...buckets.map(bucketOption)]}
        />
        <Field name="coats" label="How many coats" kind="count" size="counter" width="short" />
        <Field name="on" label="On which day" kind="day" size="counter" defaultValue={todayOn} />
        <SubmitButton size="counter" pendingText="Writing it down…">
          Write the coats down
        </SubmitButton>
      </FormFrame>
    </details>
  );
}

function bucketOption({ id, number, glaze, isForThis }: Bucket) {
  return { value: id, label: `${number}, ${glaze}${isForThis ? ', kept for this work' : ''}` };
}

function Lost(props: ChosenActsProps) {
  const { named } = props;
  return (
    <details>
      <summary>Lost: {named}</summary>
      <FormFrame action={loseChosen} label={`Lost: ${named}`}>
        <Which {...props} />
        <Field
          name="cause"
          label="Why"
          kind="select"
          size="counter"
          options={[
            { value: '', label: 'Choose why' },
            ...lossCauses.map((cause) => ({ value: cause, label: lossCauseWords[cause] })),
          ]}
        />
        <Field name="note" label="What was seen" optional maxLength={400} size="counter" />
        <p className={css['quiet']}>
          A number of which nothing else is left is begun anew at once. A loss can be taken back.
        </p>
        <SubmitButton variant="danger" size="counter" pendingText="Writing it down…">
          Write it down as lost
        </SubmitButton>
      </FormFrame>
    </details>
  );
}
