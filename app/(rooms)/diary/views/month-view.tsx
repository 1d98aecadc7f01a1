import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import {
  addDays,
  formatMonth,
  monthRange,
  nextMonth,
  previousMonth,
  type Day,
  type Month,
} from '@/lib/dates/rules';
import type { InDiary } from '@/lib/installation/reads';
import { othersOn, type OtherLine } from '@/lib/installation/rules/diary/others';
import { weeksOf } from '@/lib/installation/rules/diary/weeks';
import { dayWords } from '@/lib/installation/rules/diary/words';
import { Around } from './around';
import { InBrief } from './in-brief';
import { OtherLines } from './other-lines';
import { readDays, type Looking } from './shared';
import css from './views.module.css';

const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** One month: as a sheet of weeks at a desk; on a phone the days that have something. */
export async function MonthView({ month, ...looking }: Looking & Readonly<{ month: Month }>) {
  const { fromOn, untilOn } = monthRange(month);
  const { listed, others } = await readDays(looking, { fromOn, untilOn: addDays(untilOn, -1) });
  const [before, after] = [previousMonth(month), nextMonth(month)];
  return (
    <>
      <Around
        title={formatMonth(month)}
        before={{
          href: `/diary?month=${before}`,
          name: `The month before, ${formatMonth(before)}`,
        }}
        after={{ href: `/diary?month=${after}`, name: `The month after, ${formatMonth(after)}` }}
      />
      {listed.length + others.length === 0 ? (
        <Empty
          title={`Nothing stands in ${formatMonth(month)}`}
          act={
            <ButtonLink href="/diary" variant="quiet">
              Back to the coming days
            </ButtonLink>
          }
        >
          Choose another month, or go back to the coming days.
        </Empty>
      ) : null}
      <div className={css['weekdays']} aria-hidden="true">
        {weekdays.map((name) => (
          <span key={name}>{name}</span>
        ))}
      </div>
      <ol className={css['month']} aria-label={formatMonth(month)}>
        {weeksOf(month)
          .flat()
          .map((day, place) =>
            day ? (
              <OneDay key={day} {...{ day, place, looking, listed, others }} />
            ) : (
              <li key={`none ${place}`} data-none aria-hidden="true" />
            ),
          )}
      </ol>
    </>
  );
}

type OneDayProps = Readonly<{
  day: Day;
  looking: Looking;
  listed: readonly InDiary[];
  others: readonly OtherLine[];
}>;

function OneDay({ day, looking, listed, others }: OneDayProps) {
  const booked = listed.filter((one) => one.startsOn === day);
  const lines = othersOn(others, day);
  return (
    <li
      data-today={day === looking.todayOn || undefined}
      data-empty={booked.length + lines.length === 0 || undefined}
    >
      <h3>
        <Link href={`/diary?day=${day}`} prefetch={false} aria-label={dayWords(day)}>
          <span className={css['on-phone']}>{dayWords(day)}</span>
          <span className={css['at-desk']}>{Number(day.slice(8))}</span>
        </Link>
      </h3>
      {booked.map((one) => (
        <InBrief key={one.id} appointment={one} zone={looking.zone} />
      ))}
      <OtherLines lines={lines} />
    </li>
  );
}
