import type { Day } from '@/lib/dates/rules';
import type { InDiary } from '@/lib/installation/reads';
import { dayToldWords } from '@/lib/installation/rules/diary/weeks';
import { AppointmentRow } from './appointment-row';
import css from './diary.module.css';

type DaysToldProps = Readonly<{
  appointments: readonly InDiary[];
  zone: string;
  todayOn: Day;
  label: string;
}>;

/** Days that have something, each with its appointments, in the order they are given. */
export function DaysTold({ appointments, zone, todayOn, label }: DaysToldProps) {
  const days = [...new Set(appointments.map((one) => one.startsOn))];
  return (
    <ol className={css['days']} aria-label={label}>
      {days.map((day) => (
        <li key={day} id={`day-${day}`} className={css['day']}>
          <h3>
            <time dateTime={day}>{dayToldWords(day, todayOn)}</time>
          </h3>
          <ul>
            {appointments
              .filter((one) => one.startsOn === day)
              .map((one) => (
                <li key={one.id}>
                  <AppointmentRow appointment={one} zone={zone} />
                </li>
              ))}
          </ul>
        </li>
      ))}
    </ol>
  );
}
