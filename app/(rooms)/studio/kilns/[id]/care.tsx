import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { Day } from '@/lib/dates/rules';
import type { KilnTold } from '@/lib/studio/reads/kilns/kiln';
import { kilnParts, kilnPartWords } from '@/lib/studio/rules/kilns/keeping';
import { sendCare, sendClosed, sendReopened, sendRetired } from '../actions';
import { closedWords } from '../kiln-words';
import css from '../kilns.module.css';

type CareProps = Readonly<{ kiln: KilnTold; todayOn: Day; mayKeep: boolean }>;

/** What was changed or mended, the last first, and a form for what was done now. */
export function KilnCare({ kiln, todayOn, mayKeep }: CareProps) {
  return (
    <Section title="What was changed">
      {kiln.care.length === 0 ? (
        <p className={css['quiet']}>Nothing is written down yet.</p>
      ) : (
        <ol className={css['list']}>
          {kiln.care.map((care) => (
            <li key={care.id}>
              <span>
                {kilnPartWords[care.part]}
                {care.note ? `: ${care.note}` : ''}
              </span>
              <span className={css['quiet']}>
                <DayText day={care.on} />, {care.by}
              </span>
            </li>
          ))}
        </ol>
      )}
      {mayKeep ? (
        <FormFrame action={sendCare} label="Write down what was changed">
          <RequestKey />
          <input type="hidden" name="kilnId" value={kiln.id} />
          <Choice
            name="part"
            legend="What was changed or mended"
            options={kilnParts.map((part) => ({ value: part, label: kilnPartWords[part] }))}
            size="counter"
          />
          <Field name="on" label="When" kind="day" width="short" defaultValue={todayOn} required />
          <Field name="note" label="Note" optional />
          <SubmitButton>Write it down</SubmitButton>
        </FormFrame>
      ) : null}
    </Section>
  );
}

/** Days on which it stands still, and a form for more of them. */
export function KilnStandsStill({ kiln, todayOn, mayKeep }: CareProps) {
  return (
    <Section title="Days it stands still">
      {kiln.closed.length === 0 ? (
        <p className={css['quiet']}>None that are to come.</p>
      ) : (
        <ol className={css['list']}>
          {kiln.closed.map((days) => (
            <li key={days.id}>
              <span>{closedWords(days)}</span>
              {mayKeep && !days.isWholeStudio ? (
                <FormFrame action={sendReopened} label={`Take back ${closedWords(days)}`}>
                  <RequestKey />
                  <input type="hidden" name="closedId" value={days.id} />
                  <SubmitButton variant="quiet">Take back</SubmitButton>
                </FormFrame>
              ) : null}
            </li>
          ))}
        </ol>
      )}
      {mayKeep ? (
        <FormFrame action={sendClosed} label="More days on which it stands still">
          <RequestKey />
          <input type="hidden" name="kilnId" value={kiln.id} />
          <div className={css['pair']}>
            <Field name="fromOn" label="From" kind="day" defaultValue={todayOn} required />
            <Field name="toOn" label="To and with" kind="day" defaultValue={todayOn} required />
          </div>
          <Field name="why" label="Why" optional />
          <SubmitButton variant="quiet">It stands still then</SubmitButton>
        </FormFrame>
      ) : null}
    </Section>
  );
}

/** Out of use, or back into it. */
export function RetireKiln({ kiln }: Readonly<{ kiln: KilnTold }>) {
  const isRetired = kiln.retiredOn !== null;
  return (
    <Section title={isRetired ? 'No longer used' : 'Out of use'}>
      <FormFrame action={sendRetired} label={isRetired ? 'Into use again' : 'Out of use'}>
        <RequestKey />
        <input type="hidden" name="kilnId" value={kiln.id} />
        <input type="hidden" name="isRetired" value={isRetired ? 'no' : 'yes'} />
        <SubmitButton variant={isRetired ? 'quiet' : 'danger'}>
          {isRetired ? 'It is used again' : 'It is no longer used'}
        </SubmitButton>
      </FormFrame>
    </Section>
  );
}
