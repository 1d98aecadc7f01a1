import { Empty } from '@/app/ui/page/empty';
import { Columns, Section } from '@/app/ui/page/section';
import { addDays, monthInstants, monthOf, nextMonth, type Day } from '@/lib/dates/rules';
import { listDiary, type InDiary } from '@/lib/installation/reads';
import { DaysTold } from './days-told';
import { MonthStrip } from './month-strip';
import { readDays, type Looking } from './shared';

/** How far the list looks ahead, and how far back what is past is told, in days. */
const aheadDays = 120;
const backDays = 60;
/** For so many days what else the gallery has is told too: two weeks. */
const othersDays = 14;

/** The coming days that have something, in words, beside this month and the next. */
export async function ComingView(looking: Looking) {
  const { actor, zone, todayOn } = looking;
  const month = monthOf(todayOn);
  const after = nextMonth(month);
  const inMonth = await listDiary(actor, monthInstants(month, zone), zone);
  const inNext = await listDiary(actor, monthInstants(after, zone), zone);
  const stretch = { fromOn: addDays(todayOn, -backDays), untilOn: addDays(todayOn, aheadDays) };
  const { listed, others } = await readDays(looking, stretch);
  const coming = listed.filter((one) => one.startsOn >= todayOn);
  const past = listed.filter((one) => one.startsOn < todayOn).toReversed();
  const soon = others.filter(
    ({ untilOn, fromOn }) => untilOn >= todayOn && fromOn <= addDays(todayOn, othersDays),
  );
  return (
    <Columns
      wide={
        <>
          <Section title="Coming">
            {coming.length + soon.length > 0 ? (
              <DaysTold
                {...{ zone, todayOn }}
                appointments={coming}
                others={soon}
                label="The coming days"
              />
            ) : (
              <Empty title="Nothing is booked">
                A hanging, a delivery or a visit stands here once it is booked, here or on the sheet
                of its commission. Nobody is booked twice for the same hour.
              </Empty>
            )}
          </Section>
          {past.length > 0 ? (
            <Section title="Past">
              <DaysTold {...{ zone, todayOn }} appointments={past} label="Past days" />
            </Section>
          ) : null}
        </>
      }
      beside={
        <>
          <MonthStrip month={month} todayOn={todayOn} counts={countsOf(inMonth)} />
          <MonthStrip month={after} todayOn={todayOn} counts={countsOf(inNext)} />
        </>
      }
    />
  );
}

function countsOf(listed: readonly InDiary[]): ReadonlyMap<Day, number> {
  const counts = new Map<Day, number>();
  for (const { startsOn, calledOffWhy } of listed) {
    if (calledOffWhy === null) counts.set(startsOn, (counts.get(startsOn) ?? 0) + 1);
  }
  return counts;
}
