import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { GalleryTerms } from '@/lib/consignment/reads';
import { changeAgreed, endIt } from './actions';

type TermsFieldsProps = Readonly<{ sharePercent: string; payDays: string; terms: string }>;

/** What is agreed with another gallery: their share, when they pay, what else both sign. */
export function TermsFields({ sharePercent, payDays, terms }: TermsFieldsProps) {
  return (
    <>
      <Field
        name="sharePercent"
        label="Their share of the retail price"
        hint="40 to 50 in a hundred is common."
        kind="percent"
        unit="%"
        width="short"
        defaultValue={sharePercent}
        required
      />
      <Field
        name="payDays"
        label="They pay within"
        hint="Days after the last day of each statement."
        kind="count"
        unit="days"
        width="short"
        defaultValue={payDays}
        required
      />
      <Field
        name="terms"
        label="What else is agreed"
        hint="It stands on every consignment note, such as who may discount, and for how long."
        kind="textarea"
        rows={4}
        maxLength={2000}
        defaultValue={terms}
        optional
      />
    </>
  );
}

/** Changes what was agreed, and ends it. */
export function ChangeAgreed({ gallery }: Readonly<{ gallery: GalleryTerms }>) {
  const { consigneeId, sharePercent, payDays, terms, name } = gallery;
  return (
    <>
      <details>
        <summary>Change what is agreed</summary>
        <FormFrame action={changeAgreed} label="Change what is agreed">
          <p>Statements and notes that were made keep what stood then.</p>
          <RequestKey />
          <input type="hidden" name="consigneeId" value={consigneeId} />
          <TermsFields sharePercent={sharePercent} payDays={String(payDays)} terms={terms} />
          <SubmitButton>Write it down</SubmitButton>
        </FormFrame>
      </details>
      <details>
        <summary>End it with them</summary>
        <FormFrame action={endIt} label="End it with them">
          <p>It can be ended when the last piece is back. What they owe stays owed.</p>
          <RequestKey />
          <input type="hidden" name="consigneeId" value={consigneeId} />
          <SubmitButton variant="danger">End it with {name}</SubmitButton>
        </FormFrame>
      </details>
    </>
  );
}
