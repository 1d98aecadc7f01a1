import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { addDays, type Day } from '@/lib/dates/rules';
import { combinedRatePercent, ratesOn } from '@/lib/tax/rules';
import type { DatedRate } from '@/lib/tax/rules/dated';
import { addTaxRate, endTaxRate } from '../../actions';
import css from '../../settings.module.css';

type RatesProps = Readonly<{ rates: readonly DatedRate[]; today: Day }>;
type RateListProps = RatesProps & Readonly<{ mayKeep: boolean; isCharged: boolean }>;
type RateFormProps = RatesProps & Readonly<{ placeId: string }>;

/** Every rate with its days, and what they come to today. */
export function RateList({ rates, today, mayKeep, isCharged }: RateListProps) {
  if (rates.length === 0) {
    return (
      <Empty title="No rate is kept yet">
        {isCharged
          ? 'Nothing can be sold with this place’s tax before at least one is there. Where a sale is taxed by nobody, keep a rate of 0.'
          : 'None is needed while the gallery is not registered in that state.'}
      </Empty>
    );
  }
  const parts = ratesOn(rates, today).map(({ authority: name, ratePercent }) => ({
    name,
    ratePercent,
  }));
  return (
    <>
      <p>
        Today they come to <strong>{combinedRatePercent(parts)} %</strong> together.
      </p>
      <ul className={css['rates']}>
        {rates.map((rate) => (
          <li key={rate.id} className={css['rate']} data-past={isPast(rate, today) || undefined}>
            <span>
              {rate.authority} <strong>{rate.ratePercent} %</strong>
            </span>
            <span className={css['days']}>
              from <DayText day={rate.fromOn} style="short" />
              {rate.untilOn ? (
                <>
                  {' '}
                  to <DayText day={addDays(rate.untilOn, -1)} style="short" />
                </>
              ) : null}
            </span>
            {rate.untilOn || !mayKeep ? null : <EndRate rate={rate} />}
          </li>
        ))}
      </ul>
    </>
  );
}

function isPast(rate: DatedRate, today: Day): boolean {
  return rate.untilOn !== null && rate.untilOn <= today;
}

function EndRate({ rate }: Readonly<{ rate: DatedRate }>) {
  return (
    <details>
      <summary>
        Let this rate end<span className="heard-only">: {rate.authority}</span>
      </summary>
      <FormFrame action={endTaxRate} label={`End the rate of ${rate.authority}`} layout="row">
        <RequestKey />
        <input type="hidden" name="rateId" value={rate.id} />
        <Field name="untilOn" label="From this day on" kind="day" required width="short" />
        <SubmitButton variant="quiet">End it</SubmitButton>
      </FormFrame>
    </details>
  );
}

/** A new authority, or a new rate of one that is here; the earlier rate ends the day before. */
export function RateForm({ rates, today, placeId }: RateFormProps) {
  const authorities = [...new Set(rates.map((rate) => rate.authority))];
  return (
    <FormFrame action={addTaxRate} label="A rate from a day on">
      <RequestKey />
      <input type="hidden" name="placeId" value={placeId} />
      <Field
        name="authority"
        label="Authority"
        hint="Write it as it stands in the list to give it a new rate."
        list="authorities"
        required
      />
      <datalist id="authorities">
        {authorities.map((authority) => (
          <option key={authority} value={authority} />
        ))}
      </datalist>
      <Field name="ratePercent" label="Rate" kind="percent" required width="short" />
      <Field
        name="fromOn"
        label="First day"
        kind="day"
        defaultValue={today}
        hint="Sales made before keep the tax they were made with."
        required
        width="half"
      />
      <SubmitButton>Keep this rate</SubmitButton>
    </FormFrame>
  );
}
