import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { PieceFacts } from '@/lib/catalogue/reads/piece-facts';
import { foodUses } from '@/lib/catalogue/rules/food-use';
import { changeColourway, changeLabel } from './actions';

type LabelFormProps = Readonly<{ skuId: string; facts: PieceFacts }>;

/** What the label says of a piece, and whether its glazes are still made. */
export function LabelForm({ skuId, facts }: LabelFormProps) {
  const { colourway, grade } = facts;
  const uses = foodUses.map(({ use, words, hint }) => ({ value: use, label: words, hint }));
  return (
    <details>
      <summary>Change what its label says</summary>
      <FormFrame action={changeLabel} label="Change what its label says">
        <RequestKey />
        <input type="hidden" name="skuId" value={skuId} />
        <Field
          name="madeInYear"
          label="Year"
          kind="count"
          width="short"
          defaultValue={facts.madeInYear?.toString()}
          optional
        />
        <Field
          name="medium"
          label="Medium"
          defaultValue={facts.medium}
          placeholder="stoneware, layered glazes"
          maxLength={120}
          optional
        />
        <Choice
          name="foodUse"
          legend="Food"
          options={uses}
          defaultValue={facts.foodUse}
          layout="down"
        />
        {grade === 'first' ? null : (
          <Field name="flaw" label="What is wrong" defaultValue={facts.flaw} maxLength={120} />
        )}
        <SubmitButton variant="quiet">Write it down</SubmitButton>
      </FormFrame>
      <FormFrame action={changeColourway} label={`Whether ${colourway.name} is still made`}>
        <RequestKey />
        <input type="hidden" name="colourwayId" value={colourway.id} />
        <Field
          name="endedOn"
          label={`${colourway.name} is no longer made since`}
          kind="day"
          width="short"
          defaultValue={colourway.endedOn ?? ''}
          hint="Leave it empty while its glazes are made. Holds for every piece in this colour."
        />
        <SubmitButton variant="quiet">Write it down</SubmitButton>
      </FormFrame>
    </details>
  );
}
