import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Facts } from '@/app/ui/page/facts';
import { Columns, Section, Slab } from '@/app/ui/page/section';
import { dayOf } from '@/lib/dates/rules';
import { tenderWords } from '@/lib/documents/rules';
import { plainCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import type { InvoiceTold } from '@/lib/wholesale/reads/order';
import { settleAction } from '../../actions';
import css from '../../shops.module.css';

/** The invoice of an order that left: what is owed by when, what came, and taking more. */
export async function Invoice({ invoice }: Readonly<{ invoice: InvoiceTold }>) {
  const { timeZone } = await getGallery();
  const today = dayOf(now(), timeZone);
  return (
    <Section title="The invoice">
      <Columns
        wide={
          <>
            <InvoiceFacts invoice={invoice} />
            <Payments invoice={invoice} />
          </>
        }
        beside={invoice.owedCents > 0n ? <TakeMoney invoice={invoice} today={today} /> : null}
      />
    </Section>
  );
}

function InvoiceFacts({ invoice }: Readonly<{ invoice: InvoiceTold }>) {
  const { soldOn, dueOn, totalCents, owedCents, deliverTo, exemptWhy, paidFirst } = invoice;
  const address = <span className={css['address']}>{deliverTo}</span>;
  return (
    <Facts
      facts={[
        { name: 'Left', value: <DayText day={soldOn} /> },
        { name: 'Due', value: paidFirst ? 'paid before it left' : <DayText day={dueOn} /> },
        { name: 'Comes to', value: <Money cents={totalCents} /> },
        { name: 'Still owed', value: <Money cents={owedCents} size="strong" /> },
        { name: 'Sent to', value: deliverTo === '' ? null : address },
        { name: 'Sales tax', value: exemptWhy },
      ]}
    />
  );
}

function Payments({ invoice: { payments } }: Readonly<{ invoice: InvoiceTold }>) {
  if (payments.length === 0) return null;
  return (
    <Table
      caption="What came for it"
      columns={[{ name: 'Day' }, { name: 'How' }, { name: 'Amount', figure: true }]}
      rows={payments.map((payment) => ({
        key: String(payment.number),
        cells: [
          <DayText key="day" day={payment.receivedOn} />,
          [tenderWords[payment.kind], payment.reference].filter(Boolean).join(', '),
          <Money key="amount" cents={payment.amountCents} />,
        ],
      }))}
    />
  );
}

function TakeMoney({ invoice, today }: Readonly<{ invoice: InvoiceTold; today: string }>) {
  return (
    <Slab>
      <FormFrame action={settleAction} label="Take money for the invoice">
        <RequestKey />
        <input type="hidden" name="saleId" value={invoice.saleId} />
        <Field
          name="amount"
          label="Received"
          kind="money"
          size="counter"
          defaultValue={plainCents(invoice.owedCents)}
          required
        />
        <Choice
          name="kind"
          legend="How it came"
          options={[
            { value: 'cheque', label: 'Cheque' },
            { value: 'bank_transfer', label: 'Bank transfer' },
            { value: 'card', label: 'Card' },
            { value: 'cash', label: 'Cash' },
          ]}
          defaultValue="cheque"
          size="counter"
        />
        <Field name="reference" label="Reference" maxLength={60} optional />
        <Field name="receivedOn" label="On which day" kind="day" defaultValue={today} required />
        <SubmitButton size="counter">Write it down</SubmitButton>
      </FormFrame>
    </Slab>
  );
}
