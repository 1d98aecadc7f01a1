import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { OrderSheet } from '@/lib/wholesale/reads/order';
import { usualTerms, usualWords } from '@/lib/wholesale/rules';
import { keepOrderAction } from './actions';
import css from './shops.module.css';

type OrderFormProps = Readonly<{
  /** Null for a new one. */
  order: OrderSheet | null;
  shops: readonly { id: string; name: string }[];
  shopId: string;
}>;

/** What a shop orders, at which share of the price, and when it is paid. */
export function OrderForm({ order, shops, shopId }: OrderFormProps) {
  const lines = order?.lines.map(({ sku, quantity }) => `${sku} ${quantity}`).join('\n');
  return (
    <FormFrame action={keepOrderAction} label="The order">
      <RequestKey />
      <input type="hidden" name="orderId" value={order?.id ?? ''} />
      <Field
        name="shopId"
        label="Shop"
        kind="select"
        options={shops.map(({ id, name }) => ({ value: id, label: name }))}
        defaultValue={order?.shop.id ?? shopId}
        size="counter"
      />
      <Field
        name="pieces"
        label="What they order"
        kind="textarea"
        rows={7}
        maxLength={12_000}
        defaultValue={lines}
        hint="One SKU in each line with the count behind it: TS-10-CI 6."
        required
      />
      <Terms order={order} />
      <Field
        name="terms"
        label="Terms, as they stand on the paper"
        kind="textarea"
        rows={3}
        maxLength={1_000}
        defaultValue={order ? order.terms : usualWords}
      />
      <SubmitButton size="counter">{order ? 'Change the order' : 'Take the order'}</SubmitButton>
    </FormFrame>
  );
}

function Terms({ order }: Pick<OrderFormProps, 'order'>) {
  return (
    <div className={css['pair']}>
      <Field
        name="pricePercent"
        label="Share of the price here"
        kind="percent"
        defaultValue={order?.pricePercent ?? usualTerms.pricePercent}
      />
      <Field
        name="netDays"
        label="Paid within how many days"
        kind="count"
        hint="0 is paid before it leaves."
        defaultValue={String(order?.netDays ?? usualTerms.netDays)}
      />
      <Field
        name="shipOn"
        label="To leave by"
        kind="day"
        hint="Four to six weeks are usual."
        defaultValue={order?.shipOn ?? undefined}
      />
      <Field
        name="theirNumber"
        label="Their own number"
        maxLength={40}
        defaultValue={order?.theirNumber}
        optional
      />
    </div>
  );
}
