import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { Day } from '@/lib/dates/rules';
import { plainCents } from '@/lib/money/rules';
import type { StateWatched } from '@/lib/sales/reads/sent-to';
import { thresholdWindows, thresholdWindowWords } from '@/lib/tax/rules/threshold';
import { keepState } from '../../actions';

const windows = thresholdWindows.map((value) => ({ value, label: thresholdWindowWords[value] }));
const needs = [
  { value: 'either', label: 'One of them is enough' },
  { value: 'both', label: 'Both are needed' },
];

type StateFormProps = Readonly<{ known: StateWatched | null; today: Day }>;

/** Since when the gallery collects in a state, and from how much it must. */
export function StateForm({ known, today }: StateFormProps) {
  const label = known ? `Change what is kept of ${known.state}` : 'Another state';
  const was = known ? wasKept(known) : { ...nothingYet, lookedUpOn: today };
  return (
    <FormFrame action={keepState} label={label}>
      <RequestKey />
      {known ? (
        <input type="hidden" name="state" value={known.state} />
      ) : (
        <Field name="state" label="State" maxLength={60} width="half" required />
      )}
      <Field
        name="registeredFrom"
        label="Registered there since"
        kind="day"
        hint="Left empty, no tax is charged there."
        defaultValue={was.registeredFrom}
        width="half"
        optional
      />
      <Field
        name="thresholdCents"
        label="Must register from this much"
        kind="money"
        defaultValue={was.thresholdCents}
        width="half"
        optional
      />
      <Field
        name="thresholdSales"
        label="or from this many sales"
        kind="count"
        defaultValue={was.thresholdSales}
        width="half"
        optional
      />
      <Choice name="needs" legend="Of the two" options={needs} defaultValue={was.needs} />
      <Choice
        name="window"
        legend="Counted over"
        options={windows}
        defaultValue={was.window}
        layout="down"
      />
      <Field
        name="lookedUpOn"
        label="Looked up on"
        kind="day"
        defaultValue={was.lookedUpOn}
        width="half"
        optional
      />
      <Field
        name="note"
        label="Where, and what else it says"
        kind="textarea"
        rows={3}
        maxLength={500}
        defaultValue={was.note}
        optional
      />
      <SubmitButton>Keep this state</SubmitButton>
    </FormFrame>
  );
}

const nothingYet = {
  ...{ registeredFrom: '', thresholdCents: '', thresholdSales: '', needs: 'either' },
  ...{ window: 'this_or_last_calendar_year', note: '' },
};

function wasKept(known: StateWatched): typeof nothingYet & { lookedUpOn: string } {
  const { registeredFrom, thresholdCents, thresholdSales, needsBoth, lookedUpOn } = known;
  return {
    registeredFrom: registeredFrom ?? '',
    thresholdCents: thresholdCents === null ? '' : plainCents(thresholdCents),
    thresholdSales: thresholdSales === null ? '' : String(thresholdSales),
    needs: needsBoth ? 'both' : 'either',
    window: known.window,
    lookedUpOn: lookedUpOn ?? '',
    note: known.note,
  };
}
