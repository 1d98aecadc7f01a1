import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { noteSmallCash } from './actions';

const ways = [
  { value: 'out', label: 'Taken out' },
  { value: 'in', label: 'Put in' },
];

/** Cash out of the drawer for something small, such as stamps, or cash put in. */
export function SmallCash() {
  return (
    <Section title="Small cash" lead="Stamps, string, milk: each with its paper slip.">
      <FormFrame action={noteSmallCash} label="Small cash">
        <RequestKey />
        <Choice
          name="way"
          legend="What happened"
          options={ways}
          defaultValue="out"
          size="counter"
        />
        <Field name="amount" label="How much" kind="money" width="half" size="counter" required />
        <Field name="what" label="What for" size="counter" maxLength={200} required />
        <SubmitButton variant="quiet" size="counter">
          Write it down
        </SubmitButton>
      </FormFrame>
    </Section>
  );
}
