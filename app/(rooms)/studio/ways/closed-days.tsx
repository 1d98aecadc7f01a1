import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { formatDay } from '@/lib/dates/rules';
import type { ClosedDays } from '@/lib/studio/reads/closed-days';
import { closeStudioDays, openStudioDays } from './actions';
import css from './ways.module.css';

/** The days to come on which nobody works, and a form for more. */
export function ClosedDaysList({ closed }: Readonly<{ closed: readonly ClosedDays[] }>) {
  return (
    <Section title="Days when the studio stands still">
      {closed.length === 0 ? <p>None to come, but for the weekdays.</p> : null}
      <ul className={css['list']}>
        {closed.map((days) => (
          <li key={days.id}>
            <p>{wordsOf(days)}</p>
            <FormFrame action={openStudioDays} label={`Open again: ${wordsOf(days)}`}>
              <RequestKey />
              <input type="hidden" name="closedId" value={days.id} />
              <SubmitButton variant="quiet">Open again</SubmitButton>
            </FormFrame>
          </li>
        ))}
      </ul>
      <FormFrame action={closeStudioDays} label="Close the studio for some days">
        <RequestKey />
        <Field name="fromOn" label="From" kind="day" width="short" required />
        <Field name="toOn" label="To" kind="day" width="short" required />
        <Field name="why" label="Why" maxLength={120} optional />
        <SubmitButton variant="quiet">Close these days</SubmitButton>
      </FormFrame>
    </Section>
  );
}

function wordsOf({ fromOn, toOn, why, kiln }: ClosedDays): string {
  const days =
    fromOn === toOn
      ? formatDay(fromOn, 'short')
      : `${formatDay(fromOn, 'short')} to ${formatDay(toOn, 'short')}`;
  const whose = kiln === null ? '' : `, ${kiln} only`;
  return `${days}${whose}${why === '' ? '' : `: ${why}`}`;
}
