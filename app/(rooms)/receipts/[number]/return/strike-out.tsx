import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { strikeSaleOut } from '../../actions';

/** Strikes out a sale of today that was a slip of the hand. */
export function StrikeOut({ saleNumber }: Readonly<{ saleNumber: number }>) {
  return (
    <Section
      title="It was a slip of the hand"
      lead="A sale of today can be struck out whole: every piece goes back on the shelf, and all the money goes back as it was paid. The receipt stays, with the return beside it."
    >
      <FormFrame action={strikeSaleOut} label="Strike out the sale">
        <RequestKey />
        <input type="hidden" name="saleNumber" value={saleNumber} />
        <Field name="reason" label="Why it is struck out" size="counter" maxLength={300} required />
        <SubmitButton variant="danger" size="counter">
          Strike out the whole sale
        </SubmitButton>
      </FormFrame>
    </Section>
  );
}
