import { Way } from '@/app/ui/button/way';
import { Section } from '@/app/ui/page/section';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { comingForCollector } from '@/lib/installation/reads/calendar/appointments';
import { kindTitles } from '@/lib/installation/rules/diary/words';
import type { OpenPage } from '../open-page';
import css from '../page.module.css';

/** The days that are to come, each as a file for their own calendar. */
export async function TheirCalendar({ page }: Readonly<{ page: OpenPage }>) {
  const { gallery, link, at, token } = page;
  const coming = await comingForCollector(link.commissionId, at);
  if (coming.length === 0) return null;
  return (
    <Section title="For your own calendar">
      <ul className={css['lines']}>
        {coming.map(({ id, kind, startsAt, isOff }) => (
          <li key={id}>
            <Way href={`/c/${token}/day/${id}/ics`} download>
              {kindTitles[kind]}, {formatDay(dayOf(startsAt, gallery.timeZone), 'long')}
            </Way>
            {isOff ? ': called off; the file takes it out of your calendar again.' : null}
          </li>
        ))}
      </ul>
    </Section>
  );
}
