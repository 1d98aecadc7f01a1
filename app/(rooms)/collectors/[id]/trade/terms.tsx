import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { tradeWayWords, type TradeTerms } from '@/lib/collectors/rules/trade';
import type { Day } from '@/lib/dates/rules';
import { keepTradeTerms } from './actions';
import css from './trade.module.css';

/** What a designer gets, in a sentence. */
export function TermsSaid({ terms }: Readonly<{ terms: TradeTerms | null }>) {
  if (!terms) {
    return <p className={css['quiet']}>Nothing is agreed: they pay the price on the tag.</p>;
  }
  const { way, percent, sinceOn, note } = terms;
  return (
    <>
      <p>
        <strong>
          They get {tradeWayWords[way]} of {percent} in 100
        </strong>{' '}
        since <DayText day={sinceOn} style="short" />.{' '}
        {way === 'discount'
          ? 'Only when the sale is written to them and they pay it.'
          : 'Of what their clients pay for the pieces, before tax.'}
      </p>
      {note === '' ? null : <p className={css['note']}>{note}</p>}
    </>
  );
}

const ways = [
  { value: 'discount', label: 'A discount', hint: 'They buy, and their client pays them.' },
  { value: 'referral_fee', label: 'A referral fee', hint: 'The client buys, and they are paid.' },
  { value: 'nothing', label: 'Neither' },
];

type TermsFormProps = Readonly<{ terms: TradeTerms | null; today: Day; collectorId: string }>;

/** One or the other, never both. */
export function TermsForm({ terms, today, collectorId }: TermsFormProps) {
  return (
    <details className={css['change']} open={terms === null}>
      <summary>{terms ? 'Agree on something else' : 'Agree on something'}</summary>
      <FormFrame action={keepTradeTerms} label="What they get">
        <RequestKey />
        <input type="hidden" name="collectorId" value={collectorId} />
        <Choice
          name="way"
          legend="They get"
          hint="One or the other, never both."
          options={ways}
          defaultValue={terms?.way ?? 'discount'}
          layout="down"
        />
        <Field
          name="percent"
          label="How much"
          kind="percent"
          defaultValue={terms?.percent ?? ''}
          width="short"
        />
        <Field
          name="sinceOn"
          label="From this day on"
          kind="day"
          defaultValue={today}
          width="half"
          required
        />
        <Field
          name="note"
          label="What else was agreed"
          kind="textarea"
          rows={3}
          maxLength={500}
          hint="Does the client know? May their association’s members take a fee at all?"
          defaultValue={terms?.note ?? ''}
          optional
        />
        <SubmitButton>Keep this</SubmitButton>
      </FormFrame>
    </details>
  );
}
