import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { listInTime, type InTimeTold } from '@/lib/commissions/reads/course/in-time';
import { timeMarkWords, type TimeMark } from '@/lib/commissions/rules/course/list/in-time';
import { Lanes } from './lanes';

export const metadata = { title: 'Commissions in time' };

/** Every commission that is going on, drawn in time, and the same days as a table. */
export default async function InTimePage() {
  const actor = await requireActor('commissions.see');
  const { rows, today } = await listInTime(actor);
  return (
    <>
      <PageHead
        title="Commissions in time"
        lead="What was said yes to, what is being made, and what is promised; the soonest promise first."
        back={{ href: '/commissions', name: 'Commissions' }}
      />
      {rows.length === 0 ? (
        <Empty title="None is going on just now">
          As soon as somebody asks for a relief of their own, it is drawn here.
        </Empty>
      ) : (
        <>
          <Lanes rows={rows} today={today} />
          <Section title="The same as a table">
            <DaysTable rows={rows} />
          </Section>
        </>
      )}
    </>
  );
}

const inTable: readonly TimeMark[] = ['agreed', 'sketch', 'colours', 'promised', 'told', 'hanging'];

function DaysTable({ rows }: Readonly<{ rows: readonly InTimeTold[] }>) {
  return (
    <Table
      caption="Commissions in time"
      captionHeardOnly
      columns={[
        { name: 'commission' },
        ...inTable.map((kind) => ({ name: timeMarkWords[kind], figure: true })),
        { name: 'making', figure: true },
      ]}
      rows={rows.map((row) => ({
        key: String(row.number),
        cells: [
          <Link key="to" href={`/commissions/${row.number}`}>
            {row.number} {row.title}
          </Link>,
          ...inTable.map((kind) => <MarkedDay key={kind} row={row} kind={kind} />),
          <Making key="making" making={row.making} />,
        ],
      }))}
    />
  );
}

function MarkedDay({ row, kind }: Readonly<{ row: InTimeTold; kind: TimeMark }>) {
  const mark = row.marks.find((each) => each.kind === kind);
  return mark ? <DayText day={mark.on} style="short" /> : '–';
}

function Making({ making }: Pick<InTimeTold, 'making'>) {
  if (!making) return 'not begun';
  return (
    <>
      <DayText day={making.fromOn} style="short" /> to{' '}
      {making.isDone ? <DayText day={making.toOn} style="short" /> : 'now'}
    </>
  );
}
