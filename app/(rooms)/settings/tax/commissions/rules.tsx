import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { taxWays, taxWayWords } from '@/lib/commissions/rules/agreement/tax';
import {
  ruleWords,
  taxRuleWords,
  type DatedTaxRule,
} from '@/lib/commissions/rules/agreement/tax-days';
import { addDays, type Day } from '@/lib/dates/rules';
import { ratesOn } from '@/lib/tax/rules';
import css from '../../settings.module.css';
import { keepRule } from './actions';

type RuleListProps = Readonly<{ rules: readonly DatedTaxRule[]; today: Day }>;

/** Each way in which the tax looks at a commission: what holds today, and what came before or comes. */
export function RuleList({ rules, today }: RuleListProps) {
  return (
    <ul className={css['rates']}>
      {taxWays.map((taxAs) => {
        const own = rules.filter((each) => each.taxAs === taxAs);
        const [holds] = ratesOn(own, today);
        return (
          <li key={taxAs} className={css['rate']}>
            <strong>{capital(taxWayWords[taxAs])}</strong>
            <span>{holds ? taxRuleWords(holds) : 'No rule is kept, so it is taxed.'}</span>
            {own.map((each) => (
              <OfDays key={each.id} rule={each} isNow={each === holds} />
            ))}
          </li>
        );
      })}
    </ul>
  );
}

function OfDays({ rule, isNow }: Readonly<{ rule: DatedTaxRule; isNow: boolean }>) {
  const { fromOn, untilOn, note } = rule;
  return (
    <span className={css['days']}>
      {isNow ? 'So from ' : `${taxRuleWords(rule)} From `}
      <DayText day={fromOn} style="short" />
      {untilOn ? (
        <>
          {' '}
          to <DayText day={addDays(untilOn, -1)} style="short" />
        </>
      ) : null}
      {note === '' ? null : `. ${note}`}
    </span>
  );
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

const ways = taxWays.map((value) => ({ value, label: capital(taxWayWords[value]) }));
const treatments = (['taxed', 'not_taxed', 'not_taxed_when_separate'] as const).map((value) => ({
  value,
  label: ruleWords[value],
}));

/** What a state says about a commission; what it said before ends the day before. */
export function RuleForm({ states, today }: Readonly<{ states: readonly string[]; today: Day }>) {
  return (
    <FormFrame action={keepRule} label="How a commission is taxed, from a day on">
      <RequestKey />
      <Field
        name="state"
        label="State"
        kind="select"
        options={states.map((state) => ({ value: state, label: state }))}
        width="half"
      />
      <Choice
        name="taxAs"
        legend="About"
        options={ways}
        defaultValue="set_in_pieces"
        layout="down"
      />
      <Choice
        name="treatment"
        legend="It is"
        options={treatments}
        defaultValue="taxed"
        layout="down"
      />
      <Choice
        name="owesOnMaterials"
        kind="tick"
        legend="The materials"
        options={[
          {
            value: 'yes',
            label: 'The gallery owes tax on what the materials cost',
            hint: 'It is told with the price, and is no part of it.',
          },
        ]}
      />
      <Field
        name="note"
        label="Where it is written, and what else it says"
        kind="textarea"
        rows={3}
        maxLength={500}
        optional
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
