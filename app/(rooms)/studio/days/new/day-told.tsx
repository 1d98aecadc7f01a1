import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import type { Day } from '@/lib/dates/rules';
import type { AskedTold } from '@/lib/studio/reads/forecast/tell-asked';
import { readyDayIn } from '@/lib/studio/rules/forecast/forecast';
import {
  benchNamesOf,
  dayOrFar,
  driveLine,
  tellDrives,
} from '@/lib/studio/rules/forecast/telling/words';
import { keepDay } from '../actions';
import { DayLine, MonthLine } from '../parts/day-line';
import { scaleOf } from '../parts/scale';
import { readySentence } from '../parts/sentences';
import type { Said } from './said';
import css from '../days.module.css';

type DayToldProps = Readonly<{
  asked: AskedTold;
  todayOn: Day;
  said: Said;
  /** The commission that it may be kept with; null where there is none or somebody else proposes. */
  keepWith: { id: string; number: number } | null;
}>;

/** The day that may be promised with today's load, what drives it, and the button that keeps it. */
export function DayTold({ asked, todayOn, said, keepWith }: DayToldProps) {
  const { load, told, sizeFrom } = asked;
  const { readyOn } = told;
  const scale = scaleOf(todayOn, [readyOn.in80, readyOn.in95]);
  const { promiseInHundred } = load.facts;
  const promised = readyDayIn(told, promiseInHundred);
  return (
    <Section title="Ready by">
      <div className={css['answer']}>
        <p className={css['big']}>
          {dayOrFar(promised, todayOn)}, in {promiseInHundred} of 100
        </p>
        <MonthLine scale={scale} />
        <DayLine scale={scale} told={readyOn} />
        <p>{readySentence(readyOn, todayOn)}</p>
        <p className={css['quiet']}>
          {load.jobs.length === 0
            ? 'Nothing else is in the studio.'
            : `With today’s load: ${load.jobs.length === 1 ? 'one open job' : `${load.jobs.length} open jobs`} before it. It takes its turn behind those that have a day.`}
          {sizeFrom === 'usual'
            ? ' Nobody said how large a piece is: eight inches square and one thick is taken.'
            : ''}
        </p>
        <p>What the days go into, the most first:</p>
        <ol className={css['drives']}>
          {tellDrives(told.drives, benchNamesOf(load)).map((drive) => (
            <li key={drive.what}>{driveLine(drive)}</li>
          ))}
        </ol>
        {keepWith && readyOn.in80 ? <KeepIt said={said} commission={keepWith} /> : null}
      </div>
      <Working
        steps={[
          `the open jobs and this one go together through the studio, ${told.futures.toLocaleString('en-US')} times`,
          'what is lost begins anew; the kilns wait until they are full enough',
        ]}
        formula={`the first day by which it was ready in ${promiseInHundred} of 100 of them`}
        source="a simulation; the mean of a step is that of D. G. Malcolm and others, Operations Research 7, 1959"
        caution="Say it as a span of weeks, and narrow it after the bisque."
      />
    </Section>
  );
}

type KeepItProps = Readonly<{ said: Said; commission: { id: string; number: number } }>;

function KeepIt({ said, commission }: KeepItProps) {
  return (
    <FormFrame action={keepDay} label="Keep the day with the proposal">
      <RequestKey />
      <input type="hidden" name="commissionId" value={commission.id} />
      {Object.entries(said).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <SubmitButton size="counter">Keep it with the proposal</SubmitButton>
    </FormFrame>
  );
}
