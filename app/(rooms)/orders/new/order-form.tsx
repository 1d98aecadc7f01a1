import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { Actor } from '@/lib/access/rules';
import { getCollector } from '@/lib/collectors/reads';
import type { OrderWish } from '@/lib/orders/input';
import { take } from '../actions';
import type { ShownOrder } from './wish-form';

type OrderFormProps = Readonly<{ actor: Actor; wish: OrderWish; shown: ShownOrder }>;

const goes = [
  { value: 'collected', label: 'Collected here' },
  { value: 'sent', label: 'Sent' },
];

/** What is left to ask: whose it is, the price, the deposit, the day; then the slip. */
export async function OrderForm({ actor, wish, shown }: OrderFormProps) {
  const { piece, before } = shown;
  const known = wish.collector === null ? null : await getCollector(actor, wish.collector);
  const hidden = {
    skuId: piece.skuId,
    colourwayId: wish.colourway ?? piece.colourwayId,
    size: wish.size ?? '',
    quantity: wish.quantity,
    technique: before.technique,
    collectorId: known?.id ?? '',
  };
  return (
    <FormFrame action={take} label="Take the order">
      <RequestKey />
      <RequestKey name="slipKey" />
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {known ? null : <SomebodyNew />}
      <Field
        name="wish"
        label="What is different, and which tile was shown"
        kind="textarea"
        rows={2}
        maxLength={500}
        optional
      />
      <Field
        name="unitPriceCents"
        label="The price of one"
        kind="money"
        width="short"
        hint="Empty: as on its tag. A new colour or size needs one."
        optional
      />
      <Field
        name="depositCents"
        label="Paid down now"
        kind="money"
        width="short"
        hint="Empty: half. It counts when the pieces are handed over, and is no sale before."
        optional
      />
      <Field
        name="readyAboutOn"
        label="About ready on"
        kind="day"
        width="short"
        defaultValue={wish.wantedOn ?? before.facts.span.untilOn}
        required
      />
      <Choice
        name="goes"
        legend="How it goes"
        options={goes}
        defaultValue="collected"
        size="counter"
      />
      <Field
        name="sendTo"
        label="Where it is sent"
        kind="textarea"
        rows={2}
        maxLength={300}
        optional
      />
      <Choice
        name="said"
        kind="tick"
        legend="Before the money"
        options={[
          { value: 'yes', label: 'I said it; each piece varies, and it is not taken back' },
        ]}
        size="counter"
      />
      <SubmitButton size="counter">Take the order, and the deposit</SubmitButton>
    </FormFrame>
  );
}

function SomebodyNew() {
  return (
    <Section title="Somebody new">
      <Field name="newName" label="Name" width="half" maxLength={120} autoComplete="off" />
      <Field name="newPhone" label="Telephone" kind="telephone" width="half" optional />
      <Field name="newEmail" label="Mail" kind="email" width="half" optional />
    </Section>
  );
}
