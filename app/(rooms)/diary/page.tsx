import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { monthInput } from '@/lib/dates/input';
import {
  addDays,
  dayOf,
  dayStartAt,
  formatMonth,
  monthInstants,
  monthOf,
  nextMonth,
  type Day,
  type Month,
} from '@/lib/dates/rules';
import { listDiary, type InDiary } from '@/lib/installation/reads';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { DaysTold } from './days-told';
import { MonthStrip } from './month-strip';

export const metadata: Metadata = { title: 'Diary' };

/** How far the list looks ahead, and how far back what is past is told, in days. */
const aheadDays = 120;
const backDays = 60;

type DiaryPageProps = Readonly<{ searchParams: Promise<{ month?: string | string[] }> }>;

/** The diary: a month at a glance, and the days that have something, in words. */
export default async function DiaryPage({ searchParams }: DiaryPageProps) {
  const actor = await requireActor('diary.see');
  const { timeZone } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const thisMonth = monthOf(todayOn);
  const read = monthInput.safeParse((await searchParams).month);
  const month = read.success ? read.data : thisMonth;
  const after = nextMonth(month);
  const inMonth = await listDiary(actor, monthInstants(month, timeZone), timeZone);
  const inNext = await listDiary(actor, monthInstants(after, timeZone), timeZone);
  const mayBook = isAllowed(actor.roles, 'diary.book');
  const shared = { zone: timeZone, todayOn };
  return (
    <>
      <PageHead title="Diary" lead="Hangings, deliveries and visits, and who leads them.">
        {mayBook ? <ButtonLink href="/diary/book">Book a day</ButtonLink> : null}
      </PageHead>
      <Columns
        wide={
          month === thisMonth ? (
            <Coming {...shared} listed={await listAround(actor, todayOn, timeZone)} />
          ) : (
            <WholeMonth {...shared} month={month} listed={inMonth} />
          )
        }
        beside={
          <>
            <MonthStrip month={month} todayOn={todayOn} counts={countsOf(inMonth)} isFirst />
            <MonthStrip month={after} todayOn={todayOn} counts={countsOf(inNext)} />
          </>
        }
      />
    </>
  );
}

type ListedProps = Readonly<{ zone: string; todayOn: Day; listed: readonly InDiary[] }>;

function Coming({ zone, todayOn, listed }: ListedProps) {
  const coming = listed.filter((one) => one.startsOn >= todayOn);
  const past = listed.filter((one) => one.startsOn < todayOn).toReversed();
  return (
    <>
      <Section title="Coming">
        {coming.length > 0 ? (
          <DaysTold appointments={coming} zone={zone} todayOn={todayOn} label="The coming days" />
        ) : (
          <Empty title="Nothing is booked">
            A hanging, a delivery or a visit stands here once it is booked, here or on the sheet of
            its commission. Whoever leads one is never booked twice for the same hour.
          </Empty>
        )}
      </Section>
      {past.length > 0 ? (
        <Section title="Past">
          <DaysTold appointments={past} zone={zone} todayOn={todayOn} label="Past days" />
        </Section>
      ) : null}
    </>
  );
}

function WholeMonth({ month, zone, todayOn, listed }: ListedProps & Readonly<{ month: Month }>) {
  if (listed.length === 0) {
    return (
      <Section title={formatMonth(month)}>
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
      </Section>
    );
  }
  return (
    <Section title={formatMonth(month)}>
      <DaysTold appointments={listed} zone={zone} todayOn={todayOn} label={formatMonth(month)} />
    </Section>
  );
}

async function listAround(
  actor: Parameters<typeof listDiary>[0],
  todayOn: Day,
  zone: string,
): Promise<InDiary[]> {
  const fromAt = dayStartAt(addDays(todayOn, -backDays), zone);
  const untilAt = dayStartAt(addDays(todayOn, aheadDays), zone);
  return listDiary(actor, { fromAt, untilAt }, zone);
}

function countsOf(listed: readonly InDiary[]): ReadonlyMap<Day, number> {
  const counts = new Map<Day, number>();
  for (const { startsOn, calledOffWhy } of listed) {
    if (calledOffWhy === null) counts.set(startsOn, (counts.get(startsOn) ?? 0) + 1);
  }
  return counts;
}
