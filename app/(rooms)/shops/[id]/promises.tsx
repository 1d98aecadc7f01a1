import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { Day } from '@/lib/dates/rules';
import type { PromiseTold, ShopSheet } from '@/lib/wholesale/reads';
import { endPromiseAction, promiseAction } from '../actions';
import css from '../shops.module.css';

/** Which towns are a shop's alone, and the form that promises one. */
export function Promises({ sheet, today }: Readonly<{ sheet: ShopSheet; today: Day }>) {
  const { shop, promises } = sheet;
  return (
    <Section title="Its town">
      {promises.length === 0 ? <p>No town is promised to them.</p> : null}
      <ul className={css['promises']}>
        {promises.map((promise) => (
          <li key={promise.id}>
            <Told promise={promise} />
            <FormFrame action={endPromiseAction} label={`End the promise of ${promise.town}`}>
              <RequestKey />
              <input type="hidden" name="promiseId" value={promise.id} />
              <SubmitButton variant="quiet">End it today</SubmitButton>
            </FormFrame>
          </li>
        ))}
      </ul>
      <details>
        <summary>Promise them a town</summary>
        <FormFrame action={promiseAction} label="Promise a town">
          <RequestKey />
          <input type="hidden" name="shopId" value={shop.id} />
          <Field name="town" label="Town" defaultValue={shop.city ?? ''} maxLength={80} required />
          <Field
            name="state"
            label="State"
            defaultValue={shop.state ?? ''}
            maxLength={40}
            required
          />
          <Field name="fromOn" label="From" kind="day" defaultValue={today} required />
          <Field
            name="untilOn"
            label="Until"
            kind="day"
            hint="The first day on which it no longer holds. Empty: it holds on."
          />
          <SubmitButton>Promise it</SubmitButton>
        </FormFrame>
      </details>
    </Section>
  );
}

function Told({ promise }: Readonly<{ promise: PromiseTold }>) {
  const { town, state, fromOn, untilOn } = promise;
  return (
    <span>
      {town}, {state}, from <DayText day={fromOn} />
      {untilOn === null ? (
        ''
      ) : (
        <>
          {' '}
          until <DayText day={untilOn} />
        </>
      )}
    </span>
  );
}
