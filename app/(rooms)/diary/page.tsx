import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Views } from '@/app/ui/page/views';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { monthInput } from '@/lib/dates/input';
import { dayOf, monthOf, parseDay, type Day, type Month } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { ComingView } from './views/coming-view';
import { DayView } from './views/day-view';
import { MonthView } from './views/month-view';
import type { Looking } from './views/shared';
import { WeekView } from './views/week-view';
import css from './diary.module.css';

export const metadata: Metadata = { title: 'Diary' };

type Asked = { day?: string | string[]; week?: string | string[]; month?: string | string[] };
type DiaryPageProps = Readonly<{ searchParams: Promise<Asked> }>;

/** The diary: the coming days, or one day, week or month of it. */
export default async function DiaryPage({ searchParams }: DiaryPageProps) {
  const actor = await requireActor('diary.see');
  const { timeZone: zone } = await getGallery();
  const todayOn = dayOf(now(), zone);
  const way = wayToLook(await searchParams, todayOn);
  const bookHref = way.view === 'day' ? `/diary/book?day=${way.on}` : '/diary/book';
  return (
    <>
      <PageHead title="Diary" lead="Hangings, deliveries and visits, and who goes.">
        {isAllowed(actor.roles, 'diary.book') ? (
          <ButtonLink href={bookHref}>Book a day</ButtonLink>
        ) : null}
      </PageHead>
      <InThisRoom room="diary" here="days" roles={actor.roles} />
      <div className={css['ways-to-look']}>
        <Views label="Ways to look at the diary" views={viewsFrom(way)} />
      </div>
      <Looked way={way} looking={{ actor, zone, todayOn }} />
    </>
  );
}

type Way = { view: 'coming' | 'day' | 'week' | 'month'; on: Day };

/** What the address asks for; the coming days for anything else. */
function wayToLook({ day, week, month }: Asked, todayOn: Day): Way {
  const on = dayOr(day);
  if (on) return { view: 'day', on };
  const inWeek = dayOr(week);
  if (inWeek) return { view: 'week', on: inWeek };
  const read = monthInput.safeParse(month);
  return read.success
    ? { view: 'month', on: firstDay(read.data, todayOn) }
    : { view: 'coming', on: todayOn };
}

function viewsFrom({ view, on }: Way) {
  return [
    { href: '/diary', name: 'Coming', current: view === 'coming' },
    { href: `/diary?day=${on}`, name: 'Day', current: view === 'day' },
    { href: `/diary?week=${on}`, name: 'Week', current: view === 'week' },
    { href: `/diary?month=${monthOf(on)}`, name: 'Month', current: view === 'month' },
  ];
}

function Looked({ way, looking }: Readonly<{ way: Way; looking: Looking }>) {
  switch (way.view) {
    case 'day':
      return <DayView {...looking} day={way.on} />;
    case 'week':
      return <WeekView {...looking} day={way.on} />;
    case 'month':
      return <MonthView {...looking} month={monthOf(way.on)} />;
    case 'coming':
      return <ComingView {...looking} />;
  }
}

function dayOr(text: string | string[] | undefined): Day | null {
  const read = typeof text === 'string' ? parseDay(text) : null;
  return read?.ok ? read.value : null;
}

/** The day that one looks at when one comes from a month: today in its own, else its first. */
function firstDay(month: Month, todayOn: Day): Day {
  const first = parseDay(`${month}-01`);
  return monthOf(todayOn) === month || !first.ok ? todayOn : first.value;
}
