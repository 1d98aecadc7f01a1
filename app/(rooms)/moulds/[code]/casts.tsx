import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import type { listCasts } from '@/lib/catalogue/reads/moulds';

/** What was poured or pressed from a mould, the newest first. */
export function Casts({ casts }: Readonly<{ casts: Awaited<ReturnType<typeof listCasts>> }>) {
  if (casts.length === 0) return <p>Nothing was cast since it was written down.</p>;
  return (
    <Table
      caption="What was cast"
      captionHeardOnly
      columns={[{ name: 'When' }, { name: 'For' }, { name: 'Casts', figure: true }]}
      rows={casts.map((each) => ({
        key: each.key,
        cells: [
          <DayText key="day" day={each.on} />,
          each.jobNumber === null ? (
            ''
          ) : (
            <Link key="job" href={`/studio/${each.jobNumber}`}>
              job {each.jobNumber}
            </Link>
          ),
          `${each.casts}`,
        ],
      }))}
    />
  );
}
