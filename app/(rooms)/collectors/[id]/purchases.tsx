import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import type { Purchase } from '@/lib/collectors/reads';
import css from '../collectors.module.css';

/** What somebody bought, receipt by receipt. */
export function Purchases({ purchases }: Readonly<{ purchases: readonly Purchase[] }>) {
  if (purchases.length === 0) {
    return <p className={css['quiet']}>Nothing at the counter under this name yet.</p>;
  }
  const seesMoney = purchases.every((purchase) => purchase.totalCents !== null);
  const columns = [{ name: 'Receipt' }, { name: 'Day' }, { name: 'Pieces' }];
  return (
    <Table
      caption="Receipts, the newest first"
      captionHeardOnly
      columns={seesMoney ? [...columns, { name: 'With tax', figure: true }] : columns}
      rows={purchases.map(({ receiptNumber, soldOn, titles, totalCents }) => ({
        key: String(receiptNumber),
        cells: [
          seesMoney ? (
            <Link key="receipt" href={`/receipts/${receiptNumber}`}>
              {receiptNumber}
            </Link>
          ) : (
            receiptNumber
          ),
          <DayText key="day" day={soldOn} />,
          titles.join(', '),
          ...(totalCents === null ? [] : [<Money key="total" cents={totalCents} />]),
        ],
      }))}
    />
  );
}
