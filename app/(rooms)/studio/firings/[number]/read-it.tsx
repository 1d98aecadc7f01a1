import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { formatInstant, type Day } from '@/lib/dates/rules';
import type { FiringTold } from '@/lib/studio/reads/firings/firing';
import type { Scale } from '@/lib/studio/rules/kilns/degrees';
import { firingTime } from '@/lib/studio/rules/kilns/firing';
import { sendReading } from '../actions';
import { coolSentence } from '../firing-words';
import css from '../firings.module.css';

type ReadItProps = Readonly<{ firing: FiringTold; scale: Scale; zone: string; todayOn: Day }>;

/** A reading in one figure and one touch; when it is over, and when it will be cool. */
export function ReadIt({ firing, scale, zone, todayOn }: ReadItProps) {
  const { lit, schedule, cool } = firing;
  const time = firingTime(schedule);
  const over =
    lit && time.ok ? new Date(lit.at.getTime() + time.value.totalMinutes * 60_000) : null;
  return (
    <Section title="What it reads" id="readings">
      <div className={css['said']}>
        {lit && over ? (
          <p>
            Lit {formatInstant(lit.at, zone)}; by its schedule it is over{' '}
            {formatInstant(over, zone)}.
          </p>
        ) : null}
        {cool ? <p>{coolSentence(cool, zone)}</p> : null}
      </div>
      <FormFrame action={sendReading} label="What it reads">
        <RequestKey />
        <input type="hidden" name="firingId" value={firing.id} />
        <input type="hidden" name="degrees" value={scale} />
        <div className={css['pair']}>
          <Field
            name="reading"
            label="It reads"
            kind="count"
            size="counter"
            unit={`°${scale}`}
            required
          />
          <Field name="on" label="Day" kind="day" size="counter" defaultValue={todayOn} />
          <Field name="time" label="Time, empty for now" kind="time" size="counter" />
          <Field name="note" label="Note" size="counter" optional />
        </div>
        <SubmitButton size="counter">Write it down</SubmitButton>
      </FormFrame>
    </Section>
  );
}
