import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Section } from '@/app/ui/page/section';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import type { InDiary } from '@/lib/installation/reads';
import { kindWords } from '@/lib/installation/rules';
import { hoursWords } from '@/lib/installation/rules/diary/words';
import css from '../commissions.module.css';

type AppointmentLinesProps = Readonly<{
  sheet: Sheet;
  days: readonly InDiary[];
  seesDiary: boolean;
}>;

/** The days in the diary that belong to a commission. */
export function AppointmentLines({ sheet, days, seesDiary }: AppointmentLinesProps) {
  const { number, acts, gallery } = sheet;
  return (
    <Section
      title="In the diary"
      id="diary"
      act={
        acts.has('hang') ? (
          <ButtonLink href={`/diary/book?commission=${number}`} variant="quiet">
            Book a day
          </ButtonLink>
        ) : null
      }
    >
      {days.length === 0 ? <p className={css['quiet']}>No day is booked yet.</p> : null}
      <ul className={css['lines']}>
        {days.map((day) => (
          <li key={day.id} data-off={day.calledOffWhy === null ? undefined : true}>
            <DayText day={day.startsOn} style="long" />, {hoursWords(day, gallery.timeZone)}:{' '}
            {seesDiary ? (
              <Link href={`/diary/${day.id}`}>{kindWords[day.kind]}</Link>
            ) : (
              kindWords[day.kind]
            )}
            {` by ${day.leadName}, ${day.address}`}
            {day.calledOffWhy === null ? null : `. Called off: ${day.calledOffWhy}`}
          </li>
        ))}
      </ul>
    </Section>
  );
}
