import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { BatchTold } from '@/lib/commissions/reads/colours/studio';
import type { Day } from '@/lib/dates/rules';
import type { GlazeNamed } from '@/lib/glazes/reads/tiles';
import { keepBatch, letBatchGo } from './actions';

/** A bucket that was mixed. */
export function NewBatch({
  today,
  glazes,
}: Readonly<{ today: Day; glazes: readonly GlazeNamed[] }>) {
  const recipes = glazes.flatMap(({ id, name, recipes: versions }) => [
    ...versions.map((recipe) => ({
      value: `${id}/${recipe.id}`,
      label: `${name}, recipe ${recipe.version}`,
    })),
    ...(versions.length === 0 ? [{ value: id, label: name }] : []),
  ]);
  return (
    <Section title="Another bucket">
      <FormFrame action={keepBatch} label="Another bucket">
        <RequestKey />
        <Field name="number" label="Number on its label" width="short" />
        {recipes.length === 0 ? null : (
          <Field
            name="inBook"
            label="Glaze of the book"
            kind="select"
            options={[{ value: '', label: 'not in the book' }, ...recipes]}
            defaultValue=""
          />
        )}
        <Field
          name="glaze"
          label="Which glaze"
          hint={recipes.length === 0 ? undefined : 'Only where it is not in the book.'}
          optional={recipes.length > 0}
        />
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
