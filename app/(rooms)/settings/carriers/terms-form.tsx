import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { Day } from '@/lib/dates/rules';
import { keepTerms } from './actions';

/** Writes a carrier’s terms down from a day on. */
export function TermsForm({ today }: Readonly<{ today: Day }>) {
  return (
    <Section title="Write terms down">
      <FormFrame action={keepTerms} label="Terms of a carrier">
        <RequestKey />
        <Field name="name" label="Name" hint="Such as Parcel by road." maxLength={60} required />
        <Choice
          name="counts"
          legend="How it counts"
          options={[
            { value: 'size', label: 'By size or scale' },
            { value: 'scale', label: 'By the scale alone' },
            { value: 'freight', label: 'By freight class' },
          ]}
          defaultValue="size"
        />
        <SizeFields />
        <Field
          name="reportDays"
          label="Days to tell of damage"
          kind="count"
          hint="After it came."
          width="half"
          required
        />
        <Field
          name="claimDays"
          label="Days to claim"
          kind="count"
          hint="After it was sent."
          width="half"
          required
        />
        <Field
          name="cover"
          label="Stands for, without more"
          kind="money"
          hint="Read what it says of art: it may be less than for anything else."
          defaultValue="0"
          width="half"
        />
        <Field name="holdsFromOn" label="From" kind="day" defaultValue={today} width="half" />
        <Field
          name="source"
          label="Where that stands"
          hint="The paper, its page and its date."
          maxLength={300}
          optional
        />
        <SubmitButton>Write it down</SubmitButton>
      </FormFrame>
    </Section>
  );
}

function SizeFields() {
  return (
    <>
      <Field
        name="divisorIn3"
        label="Cubic inches that count as a pound"
        kind="count"
        hint="By size: often 139 or 166."
        width="half"
        optional
      />
      <Field
        name="sides"
        label="Sides of the box"
        kind="select"
        options={[
          { value: 'up', label: 'rounded up to an inch' },
          { value: 'nearest', label: 'to the nearest inch' },
          { value: 'as_measured', label: 'as measured' },
        ]}
        defaultValue="up"
        width="half"
      />
      <Field
        name="overIn3"
        label="Only above so many cubic inches"
        kind="count"
        hint="Where small boxes go by the scale alone: 1728 is a cubic foot."
        width="half"
        optional
      />
    </>
  );
}
