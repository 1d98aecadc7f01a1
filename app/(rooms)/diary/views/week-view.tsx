import Link from 'next/link';
import { addDays, type Day } from '@/lib/dates/rules';
import type { InDiary } from '@/lib/installation/reads';
import { othersOn, type OtherLine } from '@/lib/installation/rules/diary/others';
import { weekOf, weekWords } from '@/lib/installation/rules/diary/weeks';
import { dayWords } from '@/lib/installation/rules/diary/words';
import { Around } from './around';
import { InBrief } from './in-brief';
import { OtherLines } from './other-lines';
import { readDays, type Looking } from './shared';
import css from './views.module.css';

/** One week from Monday to Sunday: as columns at a desk, one under the other on a phone. */
export async function WeekView({ day, ...looking }: Looking & Readonly<{ day: Day }>) {
  const days = weekOf(day);
  const [fromOn, untilOn] = [days[0] ?? day, days.at(-1) ?? day];
  const { listed, others } = await readDays(looking, { fromOn, untilOn });
  return (
    <>
      <Around
        title={weekWords(day)}
        before={{ href: `/diary?week=${addDays(fromOn, -7)}`, name: 'The week before' }}
        after={{ href: `/diary?week=${addDays(fromOn, 7)}`, name: 'The week after' }}
      />
      <ol className={css['week']} aria-label="The days of the week">
        {days.map((one) => (
          <OneDay key={one} day={one} looking={looking} {...onDay(one, listed, others)} />
        ))}
      </ol>
    </>
  );
}

function onDay(day: Day, listed: readonly InDiary[], others: readonly OtherLine[]) {
  return {
    booked: listed.filter((one) => one.startsOn === day),
    lines: othersOn(others, day),
  };
}

type OneDayProps = Readonly<{
  day: Day;
  looking: Looking;
  booked: readonly InDiary[];
  lines: readonly OtherLine[];
}>;

function OneDay({ day, looking, booked, lines }: OneDayProps) {
  const [weekday = '', date = '', month = ''] = dayWords(day).split(' ');
  return (
    <li data-today={day === looking.todayOn || undefined}>
      <h3>
        <Link href={`/diary?day=${day}`} prefetch={false}>
          <span>{weekday}</span> {date} {month.slice(0, 3)}
        </Link>
      </h3>
      {booked.length + lines.length === 0 ? <p className={css['quiet']}>nothing</p> : null}
      {booked.map((one) => (
        <InBrief key={one.id} appointment={one} zone={looking.zone} names />
      ))}
      <OtherLines lines={lines} />
    </li>
  );
}
