import type { Metadata } from 'next';
import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf, daysBetween, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { gatherPromises, type Promised } from './gathered';

export const metadata: Metadata = { title: 'Everything promised' };

/** Everything that was promised to anybody, with its day and whose clock runs; late first. */
export default async function PromisesPage() {
  const actor = await requireActor('orders.see');
  const { timeZone } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const all = await gatherPromises(actor, todayOn, timeZone);
  const late = all.filter((each) => each.isLate);
  const toCome = all.filter((each) => !each.isLate);
  return (
    <>
      <PageHead
        title="Everything promised"
        back={{ href: '/orders', name: 'Special orders' }}
        lead={leadOf(late.length, toCome.length)}
      />
      {all.length === 0 ? (
        <Empty title="Nothing is promised">
          Special orders, commissions, layaways, holds, pieces on approval and pieces that are sold
          and still hang here stand in one row, by their day.
        </Empty>
      ) : null}
      {late.length === 0 ? null : (
        <Section title="Late">
          <Promises promises={late} todayOn={todayOn} caption="Late" />
        </Section>
      )}
      {toCome.length === 0 ? null : (
        <Section title="To come">
          <Promises promises={toCome} todayOn={todayOn} caption="To come" />
        </Section>
      )}
    </>
  );
}

function leadOf(late: number, toCome: number): string {
  const lateWords =
    late === 0 ? 'Nothing is late' : late === 1 ? 'One is late' : `${late} are late`;
  return `${lateWords}; ${toCome} to come.`;
}

type PromisesProps = Readonly<{
  promises: readonly Promised[];
  todayOn: Day;
  caption: string;
}>;

function Promises({ promises, todayOn, caption }: PromisesProps) {
  return (
    <Table
      caption={caption}
      captionHeardOnly
      columns={[
        { name: 'What' },
        { name: 'For' },
        { name: 'By' },
        { name: 'Where it stands', wideOnly: true },
        { name: 'Whose clock', wideOnly: true },
      ]}
      rows={promises.map((each) => ({
        key: each.key,
        cells: [
          <What key="what" promised={each} />,
          each.forWhom,
          <DayText key="by" day={each.on} said={saidDay(each.on, todayOn)} />,
          each.stands,
          each.clock,
        ],
      }))}
    />
  );
}

function What({ promised }: Readonly<{ promised: Promised }>) {
  const { what, sort, href } = promised;
  return (
    <>
      {href === null ? what : <Link href={href}>{what}</Link>}
      <br />
      <small>{sort}</small>
    </>
  );
}

function saidDay(on: Day, todayOn: Day): string {
  const days = daysBetween(todayOn, on);
  if (days === 0) return 'today';
  if (days < 0) return days === -1 ? 'yesterday' : `${-days} days ago`;
  return days === 1 ? 'tomorrow' : `in ${days} days`;
}
