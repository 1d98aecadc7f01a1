import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { formatMonth, type Month } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import { monthAddress } from '@/lib/reports/input';
import { linesBehind, type Beside, type LinesBehind } from '@/lib/reports/reads/lines-behind';

export const metadata: Metadata = { title: 'Behind a figure of the month' };

type BehindPageProps = Readonly<{
  params: Promise<{ design: string }>;
  searchParams: Promise<Record<string, string | string[]>>;
}>;

/** The sale lines behind one figure of the month, each with its receipt. */
export default async function BehindPage({ params, searchParams }: BehindPageProps) {
  const actor = await requireActor('month.see');
  const { month } = monthAddress.parse(await searchParams);
  if (!month) redirect('/month');
  const { design } = await params;
  const beside = besides.find((each) => each === design);
  const behind = await linesBehind(actor, month, beside ? { beside } : { design });
  if (!behind) notFound();
  return (
    <>
      <PageHead
        title={behind.title}
        work={!beside}
        back={{ href: `/month?month=${month}`, name: formatMonth(month) }}
        lead={leadOf(behind, month)}
      />
      {behind.lines.length === 0 ? (
        <Empty title="No line lies in this month">
          What was sold in {formatMonth(month)} of this would stand here, each with its receipt.
        </Empty>
      ) : (
        <BehindTable behind={behind} month={month} />
      )}
    </>
  );
}

const besides: readonly Beside[] = ['commissions', 'other', 'back'];

function leadOf({ units, netCents }: LinesBehind, month: Month): string {
  const count = Math.abs(units);
  const pieces = count === 1 ? 'One piece' : `${count.toLocaleString('en-US')} pieces`;
  return `${pieces} in ${formatMonth(month)}, ${formatCents(netCents)} before tax.`;
}

function BehindTable({ behind, month }: Readonly<{ behind: LinesBehind; month: Month }>) {
  return (
    <Table
      caption={`${behind.title}, ${formatMonth(month)}`}
      captionHeardOnly
      columns={[
        { name: 'Receipt' },
        { name: 'Day' },
        { name: 'What' },
        { name: 'Pieces', figure: true },
        { name: 'Net', figure: true },
      ]}
      rows={behind.lines.map((line) => ({
        key: line.id,
        cells: [
          <Link key="receipt" href={`/receipts/${line.receipt}`}>
            {line.receipt}
          </Link>,
          <DayText key="day" day={line.soldOn} />,
          line.what === '' ? line.title : line.what,
          line.quantity,
          <Money key="net" cents={line.netCents} />,
        ],
      }))}
      foot={[
        'Together',
        '',
        '',
        behind.units,
        <Money key="net" cents={behind.netCents} size="strong" />,
      ]}
    />
  );
}
