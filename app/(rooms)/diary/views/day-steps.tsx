import { timeWords } from '@/lib/dates/rules/time-of-day';
import type { InDiary } from '@/lib/installation/reads';
import { lastsWords } from '@/lib/installation/rules/crew/hours';
import type { DayStep } from '@/lib/installation/rules/diary/person-day';
import { AppointmentRow } from '../appointment-row';
import css from './views.module.css';

type DayStepsProps = Readonly<{ steps: readonly DayStep<InDiary>[]; zone: string }>;

/** What somebody does that day, one after the other: ways and appointments. */
export function DaySteps({ steps, zone }: DayStepsProps) {
  return (
    <ol className={css['steps']}>
      {steps.map((step, at) => (
        <li key={keyOf(step, at)} data-kind={step.kind}>
          {step.kind === 'booked' ? (
            <AppointmentRow appointment={step.appointment} zone={zone} />
          ) : (
            stepWords(step, zone)
          )}
        </li>
      ))}
    </ol>
  );
}

function keyOf(step: DayStep<InDiary>, at: number): string {
  if (step.kind === 'booked') return step.appointment.id;
  return `${step.kind} ${at}`;
}

function stepWords(step: Exclude<DayStep<InDiary>, { kind: 'booked' }>, zone: string) {
  if (step.kind === 'leaves') return `Leaves the gallery at ${timeWords(step.at, zone)}`;
  if (step.kind === 'back') return `Back at the gallery about ${timeWords(step.at, zone)}`;
  const way = `${lastsWords(step.minutes)} on the way`;
  return step.isShort ? <strong>{way}, more than there is</strong> : way;
}
