import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { ConsentOnCard } from '@/lib/collectors/reads/card';
import {
  consentHows,
  consentHowWords,
  consentKinds,
  consentKindWords,
  howWords,
  lastSaid,
} from '@/lib/collectors/rules/consent';
import type { Day } from '@/lib/dates/rules';
import css from '../../collectors.module.css';
import { keepConsent } from './actions';

type ConsentsProps = Readonly<{
  consents: readonly ConsentOnCard[];
  collectorId: string;
  today: Day;
  mayWrite: boolean;
}>;

/** For each way to write to somebody whether we may; the last said holds, nothing said is a no. */
export function Consents({ consents, collectorId, today, mayWrite }: ConsentsProps) {
  return (
    <>
      <ul className={css['consents']}>
        {consentKinds.map((kind) => {
          const said = lastSaid(consents, kind);
          return (
            <li key={kind} data-given={said?.given || undefined}>
              <span aria-hidden="true">{said?.given ? '✓' : '✕'}</span>
              <span>
                <strong>{consentKindWords[kind]}:</strong>{' '}
                {said ? <Said said={said} /> : 'never asked, so no'}
              </span>
            </li>
          );
        })}
      </ul>
      {consents.length > 1 ? (
        <details>
          <summary>All that was said</summary>
          <ul className={css['card']}>
            {consents.map((said) => (
              <li key={said.id}>
                {consentKindWords[said.to]}: <Said said={said} />
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      {mayWrite ? (
        <details>
          <summary>They said yes or no</summary>
          <ConsentForm {...{ collectorId, today }} />
        </details>
      ) : null}
    </>
  );
}

function Said({ said }: Readonly<{ said: ConsentOnCard }>) {
  const { given, how, saidOn, heardBy } = said;
  return (
    <>
      {given ? 'yes' : 'no'}, <DayText day={saidOn} style="short" />, {howWords(how)}; {heardBy}{' '}
      heard it
    </>
  );
}

const kinds = consentKinds.map((value) => ({ value, label: consentKindWords[value] }));
const hows = consentHows.map((value) => ({ value, label: consentHowWords[value] }));
const answers = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
];

function ConsentForm({ collectorId, today }: Readonly<{ collectorId: string; today: Day }>) {
  return (
    <FormFrame action={keepConsent} label="They said yes or no">
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <Field name="to" label="To what" kind="select" options={kinds} required />
      <Choice name="said" legend="They said" options={answers} />
      <Field name="how" label="How they said it" kind="select" options={hows} required />
      <Field name="saidOn" label="On" kind="day" width="half" defaultValue={today} required />
      <SubmitButton variant="quiet">Write it down</SubmitButton>
    </FormFrame>
  );
}
