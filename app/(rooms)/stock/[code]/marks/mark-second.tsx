import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { formatCents } from '@/lib/money/rules';
import { secondGrades, secondPriceCents, type SecondGrade } from '@/lib/stock/rules/marks/second';
import { markSecond } from './actions';

type MarkSecondProps = Readonly<{
  skuId: string;
  priceCents: bigint;
  /** The numbers that are here, with their words; null for what is no edition. */
  numbers: readonly { value: string; label: string }[] | null;
}>;

/** Marks pieces with a flaw as seconds, for good. */
export function MarkSecond({ skuId, priceCents, numbers }: MarkSecondProps) {
  const grades = (['second', 'irregular'] as const).map((grade: SecondGrade) => ({
    value: grade,
    label: secondGrades[grade].word,
    hint: `${secondGrades[grade].does}; ${formatCents(secondPriceCents(priceCents, grade))}`,
  }));
  return (
    <details>
      <summary>One of them has a flaw</summary>
      <FormFrame action={markSecond} label="Mark a second">
        <RequestKey />
        <input type="hidden" name="skuId" value={skuId} />
        <Choice name="grade" legend="What it is" options={grades} defaultValue="second" />
        {numbers ? (
          <>
            <input type="hidden" name="quantity" value="1" />
            <Field
              name="editionNumber"
              label="Which number"
              kind="select"
              options={numbers}
              hint="It leaves the edition for good, and its number stays empty."
              required
            />
          </>
        ) : (
          <Field name="quantity" label="How many" kind="count" width="short" defaultValue="1" />
        )}
        <Field
          name="flaw"
          label="What is wrong, as one would say it"
          placeholder="pinholes lower left"
          maxLength={120}
          required
        />
        <Field
          name="priceCents"
          label="Its price, if another"
          kind="money"
          width="short"
          optional
        />
        <Field
          name="picture"
          label="A picture of the flaw"
          kind="file"
          accept="image/jpeg,image/png,image/webp"
          optional
        />
        <SubmitButton variant="quiet">Mark it for good</SubmitButton>
      </FormFrame>
    </details>
  );
}
