import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section, Slab } from '@/app/ui/page/section';
import { listHomePlaces } from '@/lib/stock/reads/home-places';
import type { OrderSheet } from '@/lib/wholesale/reads/order';
import { cancelAction, shipAction } from '../../actions';
import css from '../../shops.module.css';

const moneyKinds = [
  { value: 'bank_transfer', label: 'Bank transfer' },
  { value: 'cheque', label: 'Cheque' },
  { value: 'card', label: 'Card' },
  { value: 'cash', label: 'Cash' },
];

/** Sends an order: from where, freight, and how it was paid when it is paid first. */
export async function ShipForm({ order }: Readonly<{ order: OrderSheet }>) {
  const places = await listHomePlaces();
  const owed = { value: '', label: `Not yet: owed within ${order.netDays} days` };
  const isFirst = order.netDays === 0;
  return (
    <Section title="Send it">
      <Slab>
        <FormFrame action={shipAction} label="Send the order">
          <RequestKey />
          <input type="hidden" name="orderId" value={order.id} />
          <div className={css['pair']}>
            <Field
              name="fromId"
              label="From"
              kind="select"
              options={places.map(({ id, name }) => ({ value: id, label: name }))}
              size="counter"
            />
            <Field
              name="freight"
              label="Freight, at what it costs"
              kind="money"
              size="counter"
              optional
            />
          </div>
          <Choice
            name="paidBy"
            legend={isFirst ? 'How it was paid' : 'Is it paid?'}
            options={isFirst ? moneyKinds : [owed, ...moneyKinds]}
            defaultValue={isFirst ? undefined : ''}
            size="counter"
          />
          <Field
            name="reference"
            label="Reference of the payment"
            maxLength={60}
            width="half"
            optional
          />
          <SubmitButton size="counter">Send it and write the invoice</SubmitButton>
        </FormFrame>
      </Slab>
    </Section>
  );
}

/** Ends an order that will not leave, with why. */
export function CancelForm({ orderId }: Readonly<{ orderId: string }>) {
  return (
    <details>
      <summary>It will not be sent</summary>
      <FormFrame action={cancelAction} label="Cancel the order">
        <RequestKey />
        <input type="hidden" name="orderId" value={orderId} />
        <Field
          name="why"
          label="Why"
          maxLength={400}
          hint="A shop that pushes the day by two months is often taken as having cancelled."
          required
        />
        <SubmitButton variant="danger">Cancel the order</SubmitButton>
      </FormFrame>
    </details>
  );
}
