import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { plainCents } from '@/lib/money/rules';
import { dryingFields } from '@/lib/studio/input/ways';
import type { StudioSettings } from '@/lib/studio/reads/settings';
import { formatLength, type LengthSystem } from '@/lib/units/rules';
import { keepStudioWays } from './actions';
import css from './ways.module.css';

type WaysFormProps = Readonly<{
  settings: StudioSettings;
  unit: LengthSystem;
}>;

const weekdays = [
  { value: '1', label: 'Monday' },
  { value: '2', label: 'Tuesday' },
  { value: '3', label: 'Wednesday' },
  { value: '4', label: 'Thursday' },
  { value: '5', label: 'Friday' },
  { value: '6', label: 'Saturday' },
  { value: '7', label: 'Sunday' },
];
const months = [
  ...['January', 'February', 'March', 'April', 'May', 'June'],
  ...['July', 'August', 'September', 'October', 'November', 'December'],
];

/** The days, certainties and costs that everything in the studio is reckoned with. */
export function WaysForm({ settings, unit }: WaysFormProps) {
  return (
    <FormFrame action={keepStudioWays} label="How the studio works">
      <RequestKey />
      <Section title="Days">
        <Choice
          name="closedWeekdays"
          legend="Nobody works on"
          kind="tick"
          options={weekdays}
          defaultValue={settings.closedWeekdays.join(',')}
        />
        <fieldset className={css['months']}>
          <legend>How long clay dries by the month, of 100 days as the routes say</legend>
          {dryingFields.map((name, at) => (
            <Field
              key={name}
              name={name}
              label={months[at] ?? name}
              kind="count"
              defaultValue={String(settings.dryingPercents[at] ?? 100)}
            />
          ))}
        </fieldset>
      </Section>
      <Section title="How sure">
        <Field
          name="promiseInHundred"
          label="A day is promised when it holds in so many of 100"
          kind="count"
          width="short"
          defaultValue={String(settings.promiseInHundred)}
        />
        <Field
          name="startInHundred"
          label="Enough come out good in so many of 100"
          hint="How many are to be begun follows from it."
          kind="percent"
          width="short"
          defaultValue={settings.startInHundred}
        />
      </Section>
      <KilnsAndCosts settings={settings} unit={unit} />
      <SubmitButton>Keep it so</SubmitButton>
    </FormFrame>
  );
}

function KilnsAndCosts({ settings, unit }: WaysFormProps) {
  return (
    <Section title="Kilns and costs">
      <Field
        name="roomAroundUm"
        label="Room around a piece in the kiln"
        width="short"
        defaultValue={formatLength(settings.roomAroundUm, unit)}
      />
      <Choice
        name="degrees"
        legend="The kilns read"
        options={[
          { value: 'F', label: '°F' },
          { value: 'C', label: '°C' },
        ]}
        defaultValue={settings.degrees}
      />
      <Field
        name="centsPerHour"
        label="What an hour of the maker’s hands is reckoned at"
        kind="money"
        width="short"
        defaultValue={plainCents(settings.centsPerHour)}
      />
      <Field
        name="glazeCentsPerM2"
        label="Glaze for a square metre of face"
        kind="money"
        width="short"
        defaultValue={plainCents(settings.glazeCentsPerM2)}
      />
      <Field
        name="overheadPercent"
        label="Rent, light and the like, on top of it"
        kind="percent"
        width="short"
        defaultValue={settings.overheadPercent}
      />
    </Section>
  );
}
