import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FindForm } from '@/app/ui/form/find-form';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { Actor } from '@/lib/access/rules';
import { findCollectors } from '@/lib/collectors/reads';
import { lettersOf } from '@/lib/collectors/rules';
import { giveCredit } from './actions';

/** How many people are offered at once. */
const offeredMost = 8;

/** A store credit by the owner's hand: to make amends, or to thank. */
export async function StoreCredit({ actor, who }: Readonly<{ actor: Actor; who: string }>) {
  const letters = lettersOf(who);
  const found = who === '' ? [] : (await findCollectors(actor, letters)).slice(0, offeredMost);
  const people = [
    ...found.map(({ id, name, city }) => ({
      value: id,
      label: name,
      ...(city === null ? {} : { hint: city }),
    })),
    { value: '', label: 'Nobody by name' },
  ];
  return (
    <Section
      title="Give a store credit"
      lead="To make amends, or to thank. It counts as a discount that you gave."
      id="give"
    >
      <FindForm
        action="/vouchers#give"
        name="who"
        label="For whom: a few letters of the name"
        letters={who}
      />
      <FormFrame action={giveCredit} label="Give a store credit">
        <RequestKey />
        {found.length === 0 ? (
          <input type="hidden" name="collectorId" value="" />
        ) : (
          <Choice
            name="collectorId"
            legend="For whom"
            options={people}
            defaultValue={found[0]?.id ?? ''}
            layout="down"
          />
        )}
        <Field name="amount" label="How much" kind="money" width="half" required />
        <Field name="why" label="Why" maxLength={200} required />
        <SubmitButton>Give it</SubmitButton>
      </FormFrame>
    </Section>
  );
}
