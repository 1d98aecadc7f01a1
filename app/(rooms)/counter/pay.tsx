import { Button } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { SlipShown } from '@/lib/counter/reads';
import { plainCents } from '@/lib/money/rules';
import { sell } from './actions';
import css from './counter.module.css';
import { GivenField } from './given-field';
import { PayRows } from './pay-rows';
import { SlipState } from './slip-state';

const ways = [
  { value: 'cash', label: 'Cash' },
  { value: 'card', label: 'Card' },
  { value: 'several', label: 'Other, or several' },
];

/** How it is paid, and the one button that sells. */
export function Pay({ shown }: Readonly<{ shown: SlipShown }>) {
  const { priced, dueCents } = shown.reckoned;
  return (
    <div data-money className={css['pay']}>
      <FormFrame action={sell} label="Take the money">
        <RequestKey />
        <SlipState slip={shown.slip} />
        <input type="hidden" name="expectedTotal" value={plainCents(priced.totalCents)} />
        {dueCents > 0n ? <HowPaid dueCents={dueCents} /> : <NothingLeft />}
      </FormFrame>
    </div>
  );
}

function NothingLeft() {
  return (
    <>
      <input type="hidden" name="paidBy" value="nothing" />
      <SubmitButton size="counter" wide>
        Nothing is left to pay: hand it over
      </SubmitButton>
    </>
  );
}

function HowPaid({ dueCents }: Readonly<{ dueCents: bigint }>) {
  return (
    <>
      <Choice name="paidBy" legend="Paid by" options={ways} defaultValue="cash" size="counter" />
      <div className={css['by-several']}>
        <PayRows due={dueCents.toString()} />
      </div>
      <div className={css['take-it']}>
        <GivenField total={dueCents.toString()} />
        <div className={css['by-card']}>
          <Field
            name="reference"
            label="Slip number, never the card’s"
            size="counter"
            autoComplete="off"
            maxLength={40}
            optional
          />
        </div>
        <SubmitButton size="counter" wide>
          Take the money
        </SubmitButton>
        <div className={css['by-cash']}>
          <Button type="submit" name="justRight" value="yes" variant="quiet" size="counter" wide>
            Just right
          </Button>
        </div>
      </div>
    </>
  );
}
