import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { correctCount } from '../actions';

const reasons = [
  { value: 'made', label: 'Came from the studio' },
  { value: 'broken', label: 'Broken' },
  { value: 'missing', label: 'Missing' },
  { value: 'counted', label: 'Counted: so many are here' },
];

type CorrectStockProps = Readonly<{ skuId: string; isEdition: boolean }>;

/** Says that pieces came, broke or are missing, or how many were counted. */
export function CorrectStock({ skuId, isEdition }: CorrectStockProps) {
  return (
    <details>
      <summary>Something came, broke or was counted</summary>
      <FormFrame action={correctCount} label="Correct what is here">
        <RequestKey />
        <input type="hidden" name="skuId" value={skuId} />
        <Choice name="reason" legend="What happened" options={reasons} layout="down" />
        <Field name="pieces" label="How many" kind="count" width="short" required />
        {isEdition ? (
          <Field
            name="number"
            label="Which number"
            width="short"
            hint="As under the piece: 7, or AP 2. New ones get the next by themselves."
            maxLength={12}
            optional
          />
        ) : null}
        <Field name="note" label="A note" optional maxLength={200} />
        <SubmitButton>Write it down</SubmitButton>
      </FormFrame>
    </details>
  );
}
