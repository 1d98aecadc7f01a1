import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { addDays, type Day } from '@/lib/dates/rules';
import { ratesOn } from '@/lib/tax/rules';
import {
  treatedKinds,
  treatedKindWords,
  treatmentWords,
  type DatedTreatment,
} from '@/lib/tax/rules/treatment-days';
import { addTreatment } from '../../actions';
import css from '../../settings.module.css';

type TreatmentListProps = Readonly<{ treatments: readonly DatedTreatment[]; today: Day }>;

/** Each kind of line with what holds today, what came before and what is to come. */
export function TreatmentList({ treatments, today }: TreatmentListProps) {
  return (
    <ul className={css['rates']}>
      {treatedKinds.map((kind) => {
        const own = treatments.filter((each) => each.kind === kind);
        const [holds] = ratesOn(own, today);
        return (
          <li key={kind} className={css['rate']}>
            <strong>{treatedKindWords[kind]}</strong>
            <span>{holds ? treatmentWords(holds) : 'Nothing is kept, so it is taxed.'}</span>
            {own.map((each) => (
              <OfDays key={each.id} treatment={each} isNow={each === holds} />
            ))}
          </li>
        );
      })}
    </ul>
  );
}

type OfDaysProps = Readonly<{ treatment: DatedTreatment; isNow: boolean }>;

function OfDays({ treatment, isNow }: OfDaysProps) {
  const { fromOn, untilOn } = treatment;
  return (
    <span className={css['days']}>
      {isNow ? 'So from ' : `${treatmentWords(treatment)} From `}
      <DayText day={fromOn} style="short" />
      {untilOn ? (
        <>
          {' '}
          to <DayText day={addDays(untilOn, -1)} style="short" />
        </>
      ) : null}
    </span>
  );
}

const kinds = treatedKinds.map((value) => ({ value, label: treatedKindWords[value] }));
const treatmentOptions = [
  { value: 'taxed', label: 'Taxed' },
  { value: 'not_taxed', label: 'Not taxed' },
  { value: 'not_taxed_when_separate', label: 'Not taxed when it is a line of its own' },
];
const shares = [
  { value: 'by_price', label: 'By price' },
  { value: 'by_weight', label: 'By weight' },
  { value: 'all_taxed', label: 'All of it is taxed' },
];

/** What a state says about one kind of line; what it said before ends the day before. */
export function TreatmentForm({ state, today }: Readonly<{ state: string; today: Day }>) {
  return (
    <FormFrame action={addTreatment} label="What is taxed, from a day on">
      <RequestKey />
      <input type="hidden" name="state" value={state} />
      <Choice name="kind" legend="About" options={kinds} defaultValue="shipping" />
      <Choice
        name="treatment"
        legend="It is"
        options={treatmentOptions}
        defaultValue="taxed"
        layout="down"
      />
      <Choice
        name="shareBy"
        legend="Delivery of taxed and untaxed pieces together"
        hint="Counts for delivery alone."
        options={shares}
        defaultValue="by_price"
      />
      <Field
        name="fromOn"
        label="From this day on"
        kind="day"
        defaultValue={today}
        width="half"
        required
      />
      <SubmitButton>Keep this</SubmitButton>
    </FormFrame>
  );
}
