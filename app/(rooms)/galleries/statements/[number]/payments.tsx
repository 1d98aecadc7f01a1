import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { StatementPaper } from '@/lib/consignment/reads/statements';
import type { Day } from '@/lib/dates/rules';
import { tenderWords } from '@/lib/documents/rules';
import { formatCents, plainCents } from '@/lib/money/rules';
import { receive } from '../../actions';

type PaymentsProps = Readonly<{ statement: StatementPaper; today: Day }>;

const kinds = (['cheque', 'bank_transfer', 'card', 'cash'] as const).map((kind) => ({
  value: kind,
  label: tenderWords[kind],
}));

/** What was paid for a statement so far, and the next payment. */
export function Payments({ statement, today }: PaymentsProps) {
  const { payments, owedCents, saleId } = statement;
  return (
    <>
      {payments.length === 0 ? null : (
        <ul>
          {payments.map((payment) => (
            <li key={payment.number}>
              {formatCents(payment.amountCents)} on <DayText day={payment.on} />,{' '}
              {tenderWords[payment.kind].toLowerCase()}
              {payment.reference === '' ? '' : ` ${payment.reference}`}
            </li>
          ))}
        </ul>
      )}
      {owedCents <= 0n ? null : (
        <FormFrame action={receive} label="They paid">
          <h2>They paid</h2>
          <RequestKey />
          <input type="hidden" name="saleId" value={saleId} />
          <Field
            key={owedCents.toString()}
            name="amount"
            label="How much"
            kind="money"
            width="short"
            defaultValue={plainCents(owedCents)}
            required
          />
          <Choice name="kind" legend="How it came" options={kinds} defaultValue="cheque" />
          <Field name="reference" label="Its number" maxLength={60} optional />
          <Field
            name="receivedOn"
            label="On"
            kind="day"
            width="short"
            defaultValue={today}
            required
          />
          <SubmitButton>Write it down</SubmitButton>
        </FormFrame>
      )}
    </>
  );
}
