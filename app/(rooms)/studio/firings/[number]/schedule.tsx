import { SubmitButton } from '@/app/ui/button/submit-button';
import { Table } from '@/app/ui/figures/table';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { segmentRows } from '@/lib/studio/input/firings';
import type { FiringTold } from '@/lib/studio/reads/firings/firing';
import { forecastWh } from '@/lib/studio/rules/firings/schedule';
import {
  climbInFahrenheit,
  degreesWords,
  fahrenheitOf,
  type Scale,
} from '@/lib/studio/rules/kilns/degrees';
import { firingTime, minutesWords } from '@/lib/studio/rules/kilns/firing';
import { sendSchedule } from '../actions';
import { climbWords, coneSentence } from '../firing-words';
import { ForecastWorking } from './forecast-working';
import css from '../firings.module.css';

type ScheduleProps = Readonly<{ firing: FiringTold; scale: Scale; mayChange: boolean }>;

/** A schedule segment by segment, how long it takes, what it takes from the line, and its form. */
export function Schedule({ firing, scale, mayChange }: ScheduleProps) {
  const time = firingTime(firing.schedule);
  const cone = coneSentence(firing, scale);
  const taken = forecastWh(firing.kiln.powerW, firing.schedule);
  return (
    <div className={css['said']}>
      {time.ok ? (
        <p>
          It takes {minutesWords(time.value.totalMinutes)} and goes to{' '}
          {degreesWords(time.value.peakC, scale)}. A full or an old kiln is often slower.
        </p>
      ) : null}
      {cone ? <p>{cone} The cone in the kiln goes before any figure.</p> : null}
      {time.ok ? <SegmentsTable firing={firing} scale={scale} /> : null}
      {taken.ok && !firing.opened ? (
        <ForecastWorking kiln={firing.kiln} wattHours={taken.value} />
      ) : null}
      {mayChange ? (
        <details className={css['fold']}>
          <summary>Change the schedule, the day or the note</summary>
          <ScheduleForm firing={firing} scale={scale} />
        </details>
      ) : null}
    </div>
  );
}

function SegmentsTable({ firing, scale }: Omit<ScheduleProps, 'mayChange'>) {
  const time = firingTime(firing.schedule);
  if (!time.ok) return null;
  return (
    <Table
      caption="The segments of the schedule"
      captionHeardOnly
      columns={[
        { name: 'To', figure: true },
        { name: 'At', figure: true },
        { name: 'Soak', figure: true },
        { name: 'Over after', figure: true },
      ]}
      rows={firing.schedule.segments.map((segment, at) => ({
        key: String(at),
        cells: [
          degreesWords(segment.toC, scale),
          climbWords(segment.rateCPerHour, scale),
          segment.soakMinutes === 0 ? 'none' : minutesWords(segment.soakMinutes),
          minutesWords(time.value.segments[at]?.endsAfterMinutes ?? 0),
        ],
      }))}
    />
  );
}

function ScheduleForm({ firing, scale }: Omit<ScheduleProps, 'mayChange'>) {
  const { schedule, plannedOn, note } = firing;
  const degrees = (celsius: number) => String(scale === 'F' ? fahrenheitOf(celsius) : celsius);
  return (
    <FormFrame action={sendSchedule} label="How it goes">
      <RequestKey />
      <input type="hidden" name="firingId" value={firing.id} />
      <input type="hidden" name="degrees" value={scale} />
      <div className={css['pair']}>
        <Field
          name="plannedOn"
          label="For which day"
          kind="day"
          defaultValue={plannedOn}
          required
        />
        <Field
          name="from"
          label="It begins at"
          kind="count"
          unit={`°${scale}`}
          defaultValue={degrees(schedule.fromC)}
          required
        />
      </div>
      {Array.from({ length: segmentRows }, (_, at) => (
        <SegmentFields key={at} row={at + 1} segment={schedule.segments[at]} scale={scale} />
      ))}
      <Field name="note" label="Note" defaultValue={note} optional />
      <SubmitButton size="counter">Keep the schedule</SubmitButton>
    </FormFrame>
  );
}

type SegmentFieldsProps = Readonly<{
  row: number;
  segment: FiringTold['schedule']['segments'][number] | undefined;
  scale: Scale;
}>;

/** One row of the form: to where, how fast, and for how long it stays. Empty rows are left out. */
function SegmentFields({ row, segment, scale }: SegmentFieldsProps) {
  const inScale = segment && {
    to: scale === 'F' ? fahrenheitOf(segment.toC) : segment.toC,
    rate: scale === 'F' ? climbInFahrenheit(segment.rateCPerHour) : segment.rateCPerHour,
  };
  return (
    <div className={css['segment']}>
      <Field
        name={`to${row}`}
        label={`${row}: to °${scale}`}
        kind="count"
        defaultValue={inScale && String(inScale.to)}
      />
      <Field
        name={`rate${row}`}
        label={`°${scale} an hour`}
        kind="count"
        defaultValue={inScale && String(inScale.rate)}
      />
      <Field
        name={`soak${row}`}
        label="Soak, minutes"
        kind="count"
        defaultValue={segment && String(segment.soakMinutes)}
      />
    </div>
  );
}
