import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Views } from '@/app/ui/page/views';
import { requireActor } from '@/lib/access/reads';
import { addDays, dayOf, formatDay, formatInstant, parseDay, type Day } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import { tenderWords } from '@/lib/documents/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import {
  findLastDaySold,
  listReceiptsOn,
  receiptsListed,
  type DayOfReceipts,
} from '@/lib/sales/reads/receipts-of-day';
import css from './receipts.module.css';

export const metadata: Metadata = { title: 'Receipts' };

type ReceiptsProps = Readonly<{ searchParams: Promise<{ day?: string | string[] }> }>;

/** What was sold on a day, and what it comes to. */
export default async function ReceiptsPage({ searchParams }: ReceiptsProps) {
  const actor = await requireActor('receipts.see');
  const gallery = await getGallery();
  const today = dayOf(now(), gallery.timeZone);
  const asked = parseDay([(await searchParams).day ?? ''].flat()[0] ?? '');
  const day = asked.ok ? asked.value : today;
  const [shown, before] = await Promise.all([
    listReceiptsOn(actor, day),
    findLastDaySold(actor, day),
  ]);
  return (
    <>
      <PageHead title="Receipts" lead={<DaySentence shown={shown} today={today} />}>
        <ButtonLink href="/counter">To the counter</ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="receipts" roles={actor.roles} />
      <div className={css['list']}>
        <Views label="Days" views={daysAround(day, today)} />
        {shown.receipts.length === 0 ? (
          <Empty
            title="Nothing was sold on this day"
            act={
              before ? (
                <ButtonLink href={`/receipts?day=${before}`} variant="quiet">
                  {`Back to ${formatDay(before, 'short')}`}
                </ButtonLink>
              ) : null
            }
          >
            Each sale at the counter leaves a receipt here, and the day’s sum above.
          </Empty>
        ) : (
          <DayTable shown={shown} zone={gallery.timeZone} />
        )}
      </div>
    </>
  );
}

function DaySentence({ shown, today }: Readonly<{ shown: DayOfReceipts; today: Day }>) {
  const when = shown.day === today ? 'Today' : formatDay(shown.day, 'long');
  if (shown.receipts.length === 0) return `${when}: nothing yet.`;
  const paid = shown.paid.map(
    ({ kind, amountCents }) => `${formatCents(amountCents)} ${tenderWords[kind].toLowerCase()}`,
  );
  return (
    <>
      {when}: <Money cents={shown.totalCents} size="strong" />, of which{' '}
      {formatCents(shown.taxCents)} is sales tax. By how it was paid: {paid.join(', ')}.
    </>
  );
}

function daysAround(day: Day, today: Day) {
  const before = addDays(day, -1);
  const after = addDays(day, 1);
  const views = [
    { href: `/receipts?day=${before}`, name: formatDay(before, 'short'), current: false },
    { href: `/receipts?day=${day}`, name: formatDay(day, 'short'), current: true },
  ];
  if (after > today) return views;
  return [
    ...views,
    { href: `/receipts?day=${after}`, name: formatDay(after, 'short'), current: false },
  ];
}

function DayTable({ shown, zone }: Readonly<{ shown: DayOfReceipts; zone: string }>) {
  const rows = shown.receipts.map((receipt) => ({
    key: String(receipt.number),
    cells: [
      <Link key="number" href={`/receipts/${receipt.number}`} className={css['number']}>
        {receipt.number}
      </Link>,
      <span key="what">
        <em className="work-title">{receipt.titles.join(', ')}</em>
        {receipt.collector === null ? null : `, for ${receipt.collector}`}
      </span>,
      <time key="at" dateTime={receipt.soldAt.toISOString()} className={css['when']}>
        {formatInstant(receipt.soldAt, zone).split(', ').at(-1)}
      </time>,
      receipt.soldBy,
      <Money key="total" cents={receipt.totalCents} />,
    ],
  }));
  const columns = [
    { name: 'Receipt' },
    { name: 'What' },
    { name: 'When', wideOnly: true },
    { name: 'By', wideOnly: true },
    { name: 'Total', figure: true },
  ];
  const foot = ['Sum', '', '', '', <Money key="sum" cents={shown.totalCents} />];
  return (
    <>
      <Table
        caption="Sold on this day"
        captionHeardOnly
        columns={columns}
        rows={rows}
        foot={foot}
      />
      {shown.receipts.length === receiptsListed ? (
        <p>Only the newest {receiptsListed} are listed; the sum counts all of them.</p>
      ) : null}
    </>
  );
}
