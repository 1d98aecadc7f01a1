import { Button } from '@/app/ui/button/button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { plainCents } from '@/lib/money/rules';
import type { Slip } from '@/lib/sales/reads/slip';
import { sell } from './actions';
import css from './counter.module.css';
import { GivenField } from './given-field';

type PayProps = Readonly<{ slip: Slip; collectorId: string | null }>;

const ways = [
  { value: 'cash', label: 'Cash' },
  { value: 'card', label: 'Card' },
];

/** How it is paid, and the one button that sells. */
export function Pay({ slip, collectorId }: PayProps) {
  const { totalCents } = slip.priced;
  return (
    <div data-money className={css['pay']}>
      <FormFrame action={sell} label="Take the money">
        <RequestKey />
        <input type="hidden" name="collectorId" value={collectorId ?? ''} />
        <input type="hidden" name="expectedTotal" value={plainCents(totalCents)} />
        {slip.lines.map(({ piece, quantity }) => (
          <input key={piece.skuId} type="hidden" name="line" value={`${piece.skuId}*${quantity}`} />
        ))}
        <div className={css['how']}>
          <Choice
            name="paidBy"
            legend="Paid by"
            options={ways}
            defaultValue="cash"
            size="counter"
          />
          <div className={css['by-cash']}>
            <GivenField total={totalCents.toString()} />
          </div>
          <div className={css['by-card']}>
            <Field
              name="reference"
              label="Slip number of the terminal"
              hint="Never the number of the card."
              size="counter"
              autoComplete="off"
              maxLength={40}
              optional
            />
          </div>
        </div>
        <div className={css['take']}>
          <SubmitButton size="counter" wide>
            Take the money
          </SubmitButton>
          <div className={css['by-cash']}>
            <Button type="submit" name="justRight" value="yes" variant="quiet" size="counter" wide>
              Just right
            </Button>
          </div>
        </div>
      </FormFrame>
    </div>
  );
}
