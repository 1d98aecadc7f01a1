import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { BatchTold } from '@/lib/commissions/reads/colours/studio';
import type { Day } from '@/lib/dates/rules';
import { keepBatch, letBatchGo } from './actions';

/** A bucket that was mixed. */
export function NewBatch({ today }: Readonly<{ today: Day }>) {
  return (
    <Section title="Another bucket">
      <FormFrame action={keepBatch} label="Another bucket">
        <RequestKey />
        <Field name="number" label="Number on its label" width="short" />
        <Field name="glaze" label="Which glaze" />
        <Field name="mixedOn" label="Mixed on" kind="day" width="short" defaultValue={today} />
        <Field name="weightG" label="Weight" kind="measure" width="short" optional />
        <Field name="note" label="To note" kind="textarea" rows={2} optional />
        <SubmitButton>Write it down</SubmitButton>
      </FormFrame>
    </Section>
  );
}

/** Lets a bucket go that is kept for a commission, before that is at its end. */
export function LetGo({ batches }: Readonly<{ batches: readonly BatchTold[] }>) {
  const kept = batches.flatMap(({ id, number, glaze, keptFor }) =>
    keptFor ? [{ value: id, label: `${number}, ${glaze}: for ${keptFor.title}` }] : [],
  );
  if (kept.length === 0) return null;
  return (
    <Section
      title="Let a bucket go"
      lead="With the hand-over, or an early end, it is let go by itself."
    >
      <FormFrame action={letBatchGo} label="Let a bucket go">
        <RequestKey />
        <Field name="batchId" label="Which bucket" kind="select" options={kept} />
        <Field name="why" label="Why" />
        <SubmitButton variant="quiet">Let it go</SubmitButton>
      </FormFrame>
    </Section>
  );
}
