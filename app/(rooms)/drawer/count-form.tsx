import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { pieceField } from '@/lib/drawer/input';
import { notesAndCoins } from '@/lib/drawer/rules';
import { plainCents } from '@/lib/money/rules';
import { count } from './actions';
import { CountedSoFar } from './counted-so-far';
import css from './drawer.module.css';

type CountFormProps = Readonly<{ expectedCents: bigint; floatCents: bigint }>;

/** How many of each note and coin, what stays as float, and why it differs. */
export function CountForm({ expectedCents, floatCents }: CountFormProps) {
  return (
    <FormFrame action={count} label="Count the drawer">
      <RequestKey />
      <input type="hidden" name="shown" value={expectedCents.toString()} />
      <div className={css['pieces']}>
        {notesAndCoins.map(({ cents, name }) => (
          <Field
            key={cents}
            name={pieceField(cents)}
            label={name}
            kind="count"
            size="counter"
            maxLength={4}
          />
        ))}
      </div>
      <CountedSoFar expected={expectedCents.toString()} />
      <Field
        name="reason"
        label="If it differs: why"
        hint="It is written down and never put right. More than $20.00 wants a second count."
        size="counter"
        maxLength={200}
        optional
      />
      <Field
        name="float"
        label="Stays in the drawer as float"
        kind="money"
        width="half"
        size="counter"
        defaultValue={plainCents(floatCents)}
        hint="The rest goes to the bank."
      />
      <Field
        name="cardTotal"
        label="The card terminal’s total"
        kind="money"
        width="half"
        size="counter"
        hint="Told beside what we took by card; nothing is booked."
        optional
      />
      <SubmitButton size="counter">Write the count down</SubmitButton>
    </FormFrame>
  );
}
