import css from '@/app/(rooms)/holds/holds.module.css';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Money } from '@/app/ui/figures/money';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { Proposal } from '@/lib/layaway/reads/proposal';
import { plainCents } from '@/lib/money/rules';
import { begin } from '../actions';
import type { Off } from './take-off';

type LayawayFormProps = Readonly<{
  proposal: Proposal;
  collectorId: string;
  pieces: string;
  holdId: string;
  off: Off;
}>;

/** What it comes to, what is paid now, and how the rest is paid. */
export function LayawayForm({ proposal, collectorId, pieces, holdId, off }: LayawayFormProps) {
  const { netCents, taxCents, plan, taxPlace } = proposal;
  return (
    <FormFrame action={begin} label="Put it away">
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <input type="hidden" name="pieces" value={pieces} />
      <input type="hidden" name="holdId" value={holdId} />
      <input type="hidden" name="discount" value={off.text} />
      <input type="hidden" name="discountReason" value={off.reason} />
      <input type="hidden" name="shownNet" value={plainCents(netCents)} />
      <dl className={css['sums']}>
        <div>
          <dt>Before tax</dt>
          <dd>
            <Money cents={netCents} />
          </dd>
        </div>
        <div>
          <dt>Sales tax today, {taxPlace}</dt>
          <dd>
            <Money cents={taxCents} />
          </dd>
        </div>
        <div className={css['strong']}>
          <dt>Together</dt>
          <dd>
            <Money cents={plan.totalCents} />
          </dd>
        </div>
      </dl>
      <div className={css['pair']}>
        <Field
          name="down"
          label="Paid down"
          kind="money"
          size="counter"
          defaultValue={plainCents(plan.downCents)}
          required
        />
        <Field
          name="payments"
          label="Payments after that"
          kind="count"
          size="counter"
          defaultValue={`${plan.payments}`}
          required
        />
        <Field
          name="finalOn"
          label="Paid off by"
          kind="day"
          size="counter"
          defaultValue={plan.finalOn}
          required
        />
      </div>
      <SubmitButton size="counter">Put it away</SubmitButton>
    </FormFrame>
  );
}
