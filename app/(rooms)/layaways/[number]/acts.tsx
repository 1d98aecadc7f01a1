import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import type { LayawayFacts } from '@/lib/layaway/reads/facts';
import { formatCents, plainCents } from '@/lib/money/rules';
import { cancel, handOver, pay } from '../actions';

type OfLayaway = Readonly<{ layaway: LayawayFacts }>;

/** Takes a payment: it goes onto a slip at the counter, where the money is taken. */
export function PayNow({ layaway }: OfLayaway) {
  const { id, money } = layaway;
  const next = money.next?.amountCents ?? money.remainingCents;
  return (
    <FormFrame action={pay} label="Take a payment">
      <RequestKey />
      <input type="hidden" name="layawayId" value={id} />
      <Field
        name="amount"
        label="A payment of"
        kind="money"
        size="counter"
        width="half"
        defaultValue={plainCents(next)}
        required
      />
      <SubmitButton size="counter">Put it on a slip</SubmitButton>
    </FormFrame>
  );
}

/** Hands it over: the sale is made now, and what was paid pays it. */
export function HandItOver({ layaway }: OfLayaway) {
  const { id, money } = layaway;
  if (money.tooMuchCents > 0n) {
    return (
      <Notice kind="caution">
        {formatCents(money.tooMuchCents)} more was paid than it comes to today. Give that back from
        its receipt, and then hand it over.
      </Notice>
    );
  }
  return (
    <FormFrame action={handOver} label="Hand it over">
      <RequestKey />
      <input type="hidden" name="layawayId" value={id} />
      <input type="hidden" name="shownTotal" value={plainCents(money.totalCents)} />
      <SubmitButton size="counter">Hand it over</SubmitButton>
    </FormFrame>
  );
}

const ways = [
  { value: 'same_way', label: 'As it was paid' },
  { value: 'store_credit', label: 'As a store credit' },
];

type CancelProps = OfLayaway & Readonly<{ mayKeep: boolean }>;

/** Cancels it: the pieces are free again, and the money goes back. */
export function CancelIt({ layaway, mayKeep }: CancelProps) {
  const { id, money } = layaway;
  return (
    <details>
      <summary>Cancel it</summary>
      <FormFrame action={cancel} label="Cancel it">
        <RequestKey />
        <input type="hidden" name="layawayId" value={id} />
        <p>
          {money.paidCents === 0n
            ? 'Nothing was paid. The pieces are free again at once.'
            : `${formatCents(money.paidCents)} was paid. The pieces are free again at once.`}
        </p>
        {mayKeep && money.paidCents > 0n ? (
          <Field
            name="keep"
            label="Of that, the gallery keeps"
            kind="money"
            width="half"
            hint="What the terms say, and no more."
            defaultValue="0.00"
          />
        ) : (
          <input type="hidden" name="keep" value="0" />
        )}
        <Choice name="how" legend="The rest goes back" options={ways} defaultValue="same_way" />
        <Field name="why" label="Why" maxLength={200} required />
        <SubmitButton variant="danger">Cancel the layaway</SubmitButton>
      </FormFrame>
    </details>
  );
}
