import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { plainCents } from '@/lib/money/rules';
import type { Fair } from '@/lib/fairs/reads';
import { hoursText } from '@/lib/fairs/rules';
import { keepFairAction } from './actions';
import css from './fairs.module.css';

type FairFormProps = Readonly<{
  /** Null for a new one. */
  fair: Fair | null;
  taxPlaces: readonly { id: string; name: string }[];
  homeTaxPlaceId: string;
}>;

/** What is known of a fair: name, town, days, tax place, what it costs, hours worked. */
export function FairForm({ fair, taxPlaces, homeTaxPlaceId }: FairFormProps) {
  const places = taxPlaces.map(({ id, name }) => ({ value: id, label: name }));
  return (
    <FormFrame action={keepFairAction} label="The fair">
      <RequestKey />
      <input type="hidden" name="fairId" value={fair?.id ?? ''} />
      <Field
        name="name"
        label="Name of the fair"
        defaultValue={fair?.name}
        maxLength={80}
        required
      />
      <div className={css['pair']}>
        <Field name="town" label="Town" defaultValue={fair?.town} maxLength={80} optional />
        <Field
          name="taxPlaceId"
          label="Whose sales tax holds there"
          kind="select"
          options={places}
          defaultValue={fair?.taxPlaceId ?? homeTaxPlaceId}
        />
        <Field name="fromOn" label="First day" kind="day" defaultValue={fair?.fromOn} required />
        <Field name="untilOn" label="Last day" kind="day" defaultValue={fair?.untilOn} required />
      </div>
      <Costs fair={fair} />
      <Field
        name="note"
        label="A note"
        kind="textarea"
        rows={3}
        defaultValue={fair?.note}
        optional
      />
      <SubmitButton size="counter">Keep it</SubmitButton>
    </FormFrame>
  );
}

function Costs({ fair }: Pick<FairFormProps, 'fair'>) {
  return (
    <fieldset className={css['costs']}>
      <legend>What it costs to be there, and the hours worked; later is fine</legend>
      <div className={css['four']}>
        <Field name="feeCents" label="Fee" kind="money" defaultValue={plain(fair?.feeCents)} />
        <Field
          name="travelCents"
          label="Travel"
          kind="money"
          defaultValue={plain(fair?.travelCents)}
        />
        <Field
          name="otherCents"
          label="Other"
          kind="money"
          defaultValue={plain(fair?.otherCents)}
        />
        <Field
          name="minutes"
          label="Hours"
          defaultValue={fair && fair.minutes > 0 ? hoursText(fair.minutes) : undefined}
        />
      </div>
    </fieldset>
  );
}

function plain(cents: bigint | undefined): string | undefined {
  return cents === undefined || cents === 0n ? undefined : plainCents(cents);
}
