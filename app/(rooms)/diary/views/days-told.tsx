import Link from 'next/link';
import type { Day } from '@/lib/dates/rules';
import type { InDiary } from '@/lib/installation/reads';
import { othersOn, type OtherLine } from '@/lib/installation/rules/diary/others';
import { dayToldWords } from '@/lib/installation/rules/diary/weeks';
import { AppointmentRow } from '../appointment-row';
import { OtherLines } from './other-lines';
import css from '../diary.module.css';

type DaysToldProps = Readonly<{
  appointments: readonly InDiary[];
  others?: readonly OtherLine[] | undefined;
  zone: string;
  todayOn: Day;
  label: string;
}>;

/** Days that have something, each with its appointments and what else the gallery has. */
export function DaysTold({ appointments, others = [], zone, todayOn, label }: DaysToldProps) {
  const own = appointments.map((one) => one.startsOn);
  // What began before today is told today.
  const beside = others.map(({ fromOn }) => (fromOn < todayOn ? todayOn : fromOn));
  const days = beside.length > 0 ? [...new Set([...own, ...beside])].toSorted() : [...new Set(own)];
  return (
    <ol className={css['days']} aria-label={label}>
      {days.map((day) => (
        <li key={day} id={`day-${day}`} className={css['day']}>
          <h3>
            <Link href={`/diary?day=${day}`} prefetch={false}>
              <time dateTime={day}>{dayToldWords(day, todayOn)}</time>
            </Link>
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
          <OtherLines lines={othersOn(others, day)} />
        </li>
      ))}
    </ol>
  );
}
