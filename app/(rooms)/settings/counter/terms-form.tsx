import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Section } from '@/app/ui/page/section';
import { plainCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import { keepTerms } from '../actions';
import css from '../settings.module.css';

type TermsProps = Readonly<{ gallery: Gallery }>;

/** What holds at the counter, as one form. */
export function TermsForm({ gallery }: TermsProps) {
  return (
    <FormFrame action={keepTerms} label="What holds at the counter">
      <RequestKey />
      <div className={css['terms']}>
        <div>
          <Section title="Taking something off">
            <Field
              name="staffDiscountPercent"
              label="Staff may take off by themselves, at most"
              kind="percent"
              hint="Of a line or of a slip. Beyond it the owner says yes."
              defaultValue={gallery.staffDiscountPercent}
              width="half"
              required
            />
          </Section>
          <Keeping gallery={gallery} />
        </div>
        <div>
          <Returns gallery={gallery} />
          <Section title="The drawer">
            <Field
              name="drawerFloatCents"
              label="What stays in it overnight"
              kind="money"
              defaultValue={plainCents(gallery.drawerFloatCents)}
              width="half"
              required
            />
          </Section>
        </div>
      </div>
      <SubmitButton size="counter">Keep this</SubmitButton>
    </FormFrame>
  );
}

function Returns({ gallery }: TermsProps) {
  return (
    <Section title="Bringing a piece back">
      <div className={css['fields']}>
        <Field
          name="returnDays"
          label="Days within which it may come back"
          kind="count"
          hint="Nought for never."
          defaultValue={String(gallery.returnDays)}
          width="half"
          required
        />
        <Field
          name="restockingFeePercent"
          label="What is kept of the price"
          kind="percent"
          hint="The tax goes back in full."
          defaultValue={gallery.restockingFeePercent}
          width="half"
          required
        />
        <Field
          name="returnTerms"
          label="What the receipt says about it"
          kind="textarea"
          defaultValue={gallery.returnTerms}
          maxLength={1000}
          optional
        />
        <Caution>
          in some states the terms count only when they are posted where a buyer sees them before
          paying. A sign at the counter with these words does it.
        </Caution>
        <ButtonLink href="/settings/counter/sign" variant="quiet" download>
          Print the sign
        </ButtonLink>
      </div>
    </Section>
  );
}

function Keeping({ gallery }: TermsProps) {
  return (
    <Section title="Keeping a piece for somebody">
      <div className={css['fields']}>
        <Field
          name="holdHours"
          label="Hours that a piece is held without money"
          kind="count"
          defaultValue={String(gallery.holdHours)}
          width="half"
          required
        />
        <Field
          name="approvalDays"
          label="Days that a piece may be tried at home"
          kind="count"
          defaultValue={String(gallery.approvalDays)}
          width="half"
          required
        />
        <Field
          name="layawayDownPercent"
          label="Paid at once when it is laid away"
          kind="percent"
          defaultValue={gallery.layawayDownPercent}
          width="half"
          required
        />
        <Field
          name="layawayDays"
          label="Days within which it is paid off"
          kind="count"
          defaultValue={String(gallery.layawayDays)}
          width="half"
          required
        />
        <Field
          name="layawayTerms"
          label="What the layaway paper says"
          kind="textarea"
          hint="What is kept when it ends early, and the promise to give the money back if the piece cannot be supplied."
          defaultValue={gallery.layawayTerms}
          maxLength={2000}
          optional
        />
      </div>
    </Section>
  );
}
