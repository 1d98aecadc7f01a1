import { PlanFields } from '@/app/(rooms)/commissions/[number]/proposal/new/plan-fields';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { CommissionTerms } from '@/lib/commissions/rules/proposal/terms';
import { plainCents } from '@/lib/money/rules';
import type { Gallery } from '@/lib/platform/settings';
import { keepTerms } from './actions';
import { RateFields } from './rate-fields';

type TermsFormProps = Readonly<{ gallery: Gallery; terms: CommissionTerms }>;

/** How the gallery prices and agrees, in one form. */
export function CommissionTermsForm({ gallery, terms }: TermsFormProps) {
  return (
    <FormFrame action={keepTerms} label="How commissions are priced and agreed">
      <RequestKey />
      <RateFields basis={terms.basis} unit={gallery.lengthUnit} />
      <PlanFields plan={terms.plan} />
      <DesignFields terms={terms} />
      <EndFields terms={terms} />
      <Field name="terms" label="Terms, in your words" kind="textarea" defaultValue={terms.terms} />
      <Field
        name="notIncluded"
        label="Not included, commonly"
        kind="textarea"
        defaultValue={terms.notIncluded}
      />
      <Choice
        name="paperSize"
        legend="Papers are printed on"
        options={[
          { value: 'letter', label: 'US Letter' },
          { value: 'a4', label: 'A4' },
        ]}
        defaultValue={gallery.paperSize}
      />
      <SubmitButton>Keep it</SubmitButton>
    </FormFrame>
  );
}

function DesignFields({ terms }: Pick<TermsFormProps, 'terms'>) {
  return (
    <>
      <Field
        name="designFeePercent"
        label="Design fee, of the work"
        kind="percent"
        width="short"
        defaultValue={terms.designFeePercent}
      />
      <Choice
        name="designFeeCredited"
        legend="The design fee is part of the price"
        options={[
          { value: 'yes', label: 'yes' },
          { value: 'no', label: 'no, it comes on top' },
        ]}
        defaultValue={terms.designFeeCredited ? 'yes' : 'no'}
      />
      <Field
        name="roundsIncluded"
        label="Rounds of changes included"
        kind="count"
        width="short"
        defaultValue={String(terms.roundsIncluded)}
      />
      <Field
        name="extraRoundCents"
        label="Each further round"
        kind="money"
        width="short"
        defaultValue={plainCents(terms.extraRoundCents)}
      />
      <Field
        name="validDays"
        label="A proposal holds, in days"
        kind="count"
        width="short"
        defaultValue={String(terms.validDays)}
      />
      <Field
        name="answerDays"
        label="An answer is expected within, in days"
        hint="Later than that, the day moves with it."
        kind="count"
        width="short"
        defaultValue={String(terms.answerDays)}
      />
    </>
  );
}

function EndFields({ terms }: Pick<TermsFormProps, 'terms'>) {
  return (
    <>
      <Field
        name="cancelMakingPercent"
        label="Ended while it is made: of the price, this stays"
        kind="percent"
        width="short"
        defaultValue={terms.cancelMakingPercent}
      />
      <Field
        name="cancelFinishedPercent"
        label="Ended when it is finished: of the price, this stays"
        kind="percent"
        width="short"
        defaultValue={terms.cancelFinishedPercent}
      />
      <Field
        name="colourLimit"
        label="A fired colour is off its tile from here on (CIEDE2000)"
        hint="2 is seen side by side, 5 at a glance; an eye beside the tile decides."
        kind="measure"
        width="short"
        defaultValue={terms.colourLimit}
      />
    </>
  );
}
