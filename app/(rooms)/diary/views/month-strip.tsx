import Link from 'next/link';
import { formatMonth, type Day, type Month } from '@/lib/dates/rules';
import { weeksOf } from '@/lib/installation/rules/diary/weeks';
import css from '../diary.module.css';

const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

type MonthStripProps = Readonly<{
  month: Month;
  todayOn: Day;
  /** How many appointments each day has; days without any are left out. */
  counts: ReadonlyMap<Day, number>;
}>;

/** A month at a glance: days that have something carry a mark, and lead to it in the list. */
export function MonthStrip({ month, todayOn, counts }: MonthStripProps) {
  return (
    <nav className={css['strip']} aria-label={formatMonth(month)}>
      <div className={css['strip-head']}>
        <h2>
          <Link href={`/diary?month=${month}`} prefetch={false}>
            {formatMonth(month)}
          </Link>
        </h2>
      </div>
      <table className={css['month']}>
        <thead>
          <tr>
            {weekdays.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {weeksOf(month).map((week, index) => (
            <tr key={week.find((day) => day !== null) ?? index}>
              {week.map((day, place) => (
                <td key={day ?? place} data-today={day === todayOn || undefined}>
                  {day ? <DayPlace day={day} count={counts.get(day) ?? 0} /> : null}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </nav>
  );
}

function DayPlace({ day, count }: Readonly<{ day: Day; count: number }>) {
  const number = Number(day.slice(8));
  if (count === 0) return <span>{number}</span>;
  return (
    <Link href={`/diary?day=${day}`} prefetch={false}>
      {number}
      <span className={css['dots']} aria-hidden="true">
        {'•'.repeat(Math.min(count, 3))}
      </span>
      <span className="heard-only">
        , {count === 1 ? '1 appointment' : `${count} appointments`}
      </span>
    </Link>
  );
}
