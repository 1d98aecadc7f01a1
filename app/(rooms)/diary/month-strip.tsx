import Link from 'next/link';
import { formatMonth, nextMonth, previousMonth, type Day, type Month } from '@/lib/dates/rules';
import { weeksOf } from '@/lib/installation/rules/diary/weeks';
import css from './diary.module.css';

const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

type MonthStripProps = Readonly<{
  month: Month;
  todayOn: Day;
  /** How many appointments each day has; days without any are left out. */
  counts: ReadonlyMap<Day, number>;
  /** The month that the page is about: it leads to the months around it. */
  isFirst?: boolean | undefined;
}>;

/** A month at a glance: days that have something carry a mark, and lead to it in the list. */
export function MonthStrip({ month, todayOn, counts, isFirst }: MonthStripProps) {
  const before = previousMonth(month);
  const after = nextMonth(month);
  return (
    <nav className={css['strip']} aria-label={formatMonth(month)}>
      <div className={css['strip-head']}>
        {isFirst ? <MonthLink month={before} words="The month before" arrow="←" /> : null}
        <h2>{formatMonth(month)}</h2>
        {isFirst ? <MonthLink month={after} words="The month after" arrow="→" /> : null}
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

type MonthLinkProps = Readonly<{ month: Month; words: string; arrow: string }>;

function MonthLink({ month, words, arrow }: MonthLinkProps) {
  return (
    <Link href={`/diary?month=${month}`} aria-label={`${words}, ${formatMonth(month)}`}>
      {arrow}
    </Link>
  );
}

function DayPlace({ day, count }: Readonly<{ day: Day; count: number }>) {
  const number = Number(day.slice(8));
  if (count === 0) return <span>{number}</span>;
  return (
    <a href={`#day-${day}`}>
      {number}
      <span className={css['dots']} aria-hidden="true">
        {'•'.repeat(Math.min(count, 3))}
      </span>
      <span className="heard-only">
        , {count === 1 ? '1 appointment' : `${count} appointments`}
      </span>
    </a>
  );
}
