import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { FormAction } from '@/app/ui/form-state';
import type { OrderShown } from '@/lib/orders/reads/order';
import { askDeposit, bringIn, callOff, handOver, moveDay, toldReady } from '../actions';
import css from '../orders.module.css';

/** What can be done with an order now, the next thing first. */
export function OrderActs({ order }: Readonly<{ order: OrderShown }>) {
  const { where } = order.standing;
  if (where === 'ended' || where === 'handed_over') return null;
  const isHere = order.waitingHere > 0;
  const missing = order.quantity - order.waitingHere - order.handedOver;
  return (
    <div className={css['acts']}>
      {where === 'deposit' ? (
        <OneTouch order={order} action={askDeposit} label="Take the deposit" main />
      ) : null}
      {where === 'ready' ? (
        <OneTouch order={order} action={toldReady} label="They were told that it is here" main />
      ) : null}
      {isHere ? (
        <OneTouch order={order} action={handOver} label="Hand it over" main={where === 'told'} />
      ) : null}
      {missing > 0 ? <BringIn order={order} missing={missing} /> : null}
      <AnotherDay order={order} />
      <CallOff order={order} />
    </div>
  );
}

type OneTouchProps = Readonly<{
  order: OrderShown;
  action: FormAction;
  label: string;
  main: boolean;
}>;

function OneTouch({ order, action, label, main }: OneTouchProps) {
  return (
    <FormFrame action={action} label={label}>
      <RequestKey />
      <input type="hidden" name="orderId" value={order.id} />
      <input type="hidden" name="number" value={order.number} />
      <SubmitButton size="counter" variant={main ? 'main' : 'quiet'}>
        {label}
      </SubmitButton>
    </FormFrame>
  );
}

function BringIn({ order, missing }: Readonly<{ order: OrderShown; missing: number }>) {
  return (
    <details open={order.standing.where === 'made'}>
      <summary>They are made: bring them in</summary>
      <FormFrame action={bringIn} label="Bring them in">
        <RequestKey />
        <input type="hidden" name="orderId" value={order.id} />
        <Field
          name="pieces"
          label="How many good ones"
          kind="count"
          width="short"
          size="counter"
          hint={`${missing} are kept for the order; spare ones come into stock.`}
          defaultValue={`${missing}`}
          required
        />
        <SubmitButton size="counter">Bring them in</SubmitButton>
      </FormFrame>
    </details>
  );
}

function AnotherDay({ order }: Readonly<{ order: OrderShown }>) {
  return (
    <details>
      <summary>Name another day</summary>
      <FormFrame action={moveDay} label="Name another day">
        <RequestKey />
        <input type="hidden" name="orderId" value={order.id} />
        <Field
          name="readyAboutOn"
          label="About ready on"
          kind="day"
          width="short"
          hint="Tell them first; the studio’s job moves with it."
          defaultValue={order.readyAboutOn}
          required
        />
        <Field name="why" label="Why" maxLength={200} optional />
        <SubmitButton variant="quiet">Write it down</SubmitButton>
      </FormFrame>
    </details>
  );
}

const ways = [
  { value: 'same_way', label: 'As it was paid' },
  { value: 'store_credit', label: 'As store credit' },
];

function CallOff({ order }: Readonly<{ order: OrderShown }>) {
  return (
    <details>
      <summary>Call it off</summary>
      <FormFrame action={callOff} label="Call it off">
        <RequestKey />
        <input type="hidden" name="orderId" value={order.id} />
        <Field name="why" label="Why" maxLength={200} required />
        {order.paidCents === 0n ? (
          <input type="hidden" name="how" value="same_way" />
        ) : (
          <>
            <Field
              name="keepCents"
              label="Kept of the deposit"
              kind="money"
              width="short"
              hint="Empty: all of it goes back."
              optional
            />
            <Choice name="how" legend="How it goes back" options={ways} defaultValue="same_way" />
          </>
        )}
        <SubmitButton variant="danger">Call it off</SubmitButton>
      </FormFrame>
    </details>
  );
}
