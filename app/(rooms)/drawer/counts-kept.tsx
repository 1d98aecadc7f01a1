import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { formatInstant } from '@/lib/dates/rules';
import { countsListed, type CountKept } from '@/lib/drawer/reads';
import { differenceWords } from '@/lib/drawer/rules';
import css from './drawer.module.css';

type CountsKeptProps = Readonly<{ counts: readonly CountKept[]; zone: string }>;

/** The counts that were written down, the newest first. */
export function CountsKept({ counts, zone }: CountsKeptProps) {
  const last = counts.at(-1);
  if (!last) {
    return (
      <Empty title="The drawer was never counted">
        Count it at the end of a day, above; its sheet is kept here.
      </Empty>
    );
  }
  return (
    <>
      <Table
        caption="Days that were counted"
        captionHeardOnly
        columns={[
          { name: 'Sheet' },
          { name: 'Day' },
          { name: 'By', wideOnly: true },
          { name: 'It was', wideOnly: true },
          { name: 'Counted', figure: true },
          { name: 'To the bank', figure: true },
        ]}
        rows={counts.map((count) => ({
          key: String(count.number),
          cells: [
            <Link key="number" href={`/drawer/${count.number}`} className={css['number']}>
              {count.number}
            </Link>,
            <span key="on">
              <DayText day={count.on} />, {formatInstant(count.at, zone).split(', ').at(-1)}
            </span>,
            count.by,
            differenceWords(count.countedCents - count.expectedCents),
            <Money key="counted" cents={count.countedCents} />,
            <Money key="banked" cents={count.bankedCents} />,
          ],
        }))}
      />
      {counts.length === countsListed ? (
        <p>
          <Link href={`/drawer?before=${last.number}#counted`}>Days before that</Link>
        </p>
      ) : null}
    </>
  );
}
