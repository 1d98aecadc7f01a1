import { Section } from '@/app/ui/page/section';
import { daysForCollector } from '@/lib/installation/reads/offers/days';
import { formatDay } from '@/lib/dates/rules';
import { hoursWords, kindTitles } from '@/lib/installation/rules/diary/words';
import type { OpenPage } from '../open-page';
import css from '../page.module.css';

/** The days that were chosen on this page, as they stand in the diary now. */
export async function TheirDays({ page }: Readonly<{ page: OpenPage }>) {
  const { gallery, link, at } = page;
  const how = { zone: gallery.timeZone, now: at };
  const offers = await daysForCollector(link.commissionId, how);
  const chosen = offers.filter((offer) => offer.chosen);
  if (chosen.length === 0) return null;
  return (
    <Section title="Your day">
      <ul className={css['lines']}>
        {chosen.map(({ offerId, kind, address, chosen: day }) =>
          day ? (
            <li key={offerId}>
              <strong>{kindTitles[kind]}</strong>: {formatDay(day.on, 'long')},{' '}
              {hoursWords(day, gallery.timeZone)}, {address}
              {day.isCalledOff ? '. It was called off; the gallery finds another with you.' : null}
            </li>
          ) : null,
        )}
      </ul>
    </Section>
  );
}
