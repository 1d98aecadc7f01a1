import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { Day } from '@/lib/dates/rules';
import type { ClaimTold } from '@/lib/sending/reads/told';
import type { ClaimEventKind } from '@/lib/sending/rules/claims';
import { claimActs } from '@/lib/sending/rules/claims';
import { claimEventAction } from '../../../actions';
import css from '../../../sending.module.css';

const names: Readonly<Record<ClaimEventKind, string>> = {
  told: 'The carrier was told',
  claimed: 'Everything was sent in',
  paid: 'It was paid',
  refused: 'It was refused',
  withdrawn: 'We withdraw it',
  noted: 'A note',
};

type ClaimFormProps = Readonly<{ claim: ClaimTold; today: Day }>;

/** Says what came of a claim: what may come next is offered, and a note always. */
export function ClaimForm({ claim, today }: ClaimFormProps) {
  const offered = claimActs(claim.events);
  return (
    <Section title="Say what came of it">
      <FormFrame action={claimEventAction} label="What came of the claim">
        <RequestKey />
        <input type="hidden" name="claimId" value={claim.id} />
        <Choice
          name="kind"
          legend="What came of it"
          options={offered.map((kind) => ({ value: kind, label: names[kind] }))}
          defaultValue={offered[0]}
        />
        <div className={css['pair']}>
          <Field name="on" label="On" kind="day" defaultValue={today} />
          {offered.includes('paid') ? (
            <Field
              name="amount"
              label="How much"
              kind="money"
              hint="Only what was paid."
              optional
            />
          ) : null}
        </div>
        <Field
          name="words"
          label="To note"
          kind="textarea"
          rows={2}
          hint="By whom, by which way, under which number."
          maxLength={1000}
          optional
        />
        <SubmitButton>Write it down</SubmitButton>
      </FormFrame>
    </Section>
  );
}
