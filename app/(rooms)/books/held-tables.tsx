import Link from 'next/link';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import type { CommissionMoney, TaxHeld } from '@/lib/ledger/reads/held';
import { formatMonth, type Month } from '@/lib/dates/rules';
import { sumCents } from '@/lib/money/rules';

/** Deposits held and sums owed, by commission. */
export function CommissionMoneyTable({ rows }: Readonly<{ rows: readonly CommissionMoney[] }>) {
  if (rows.length === 0) {
    return <p>Nothing is held for a collector on that day, and nobody owes anything.</p>;
  }
  const held = sumCents(rows.map((row) => row.depositCents));
  const owed = sumCents(rows.map((row) => row.owedCents));
  return (
    <Table
      caption="Deposits held and sums owed, by commission"
      captionHeardOnly
      columns={[
        { name: 'Commission' },
        { name: 'Deposit held', figure: true },
        { name: 'Owed to us', figure: true },
      ]}
      rows={rows.map((row) => ({
        key: String(row.number),
        cells: [
          <span key="what">
            <Link href={`/commissions/${row.number}`}>
              {row.number} <em className="work-title">{row.title}</em>
            </Link>
            , {row.collector}
          </span>,
          <Money key="held" cents={row.depositCents} />,
          <Money key="owed" cents={row.owedCents} />,
        ],
      }))}
      foot={['Sum', <Money key="held" cents={held} />, <Money key="owed" cents={owed} />]}
    />
  );
}

type TaxTableProps = Readonly<{ rows: readonly TaxHeld[]; month: Month }>;

/** Sales tax by authority: what the month added, and all that is held. */
export function TaxTable({ rows, month }: TaxTableProps) {
  if (rows.length === 0) return <p>No sales tax has been charged yet.</p>;
  const added = sumCents(rows.map((row) => row.monthCents));
  const held = sumCents(rows.map((row) => row.heldCents));
  return (
    <Table
      caption="Sales tax held, by authority"
      captionHeardOnly
      columns={[
        { name: 'Authority' },
        { name: `Charged in ${formatMonth(month)}`, figure: true },
        { name: 'Held in all', figure: true },
      ]}
      rows={rows.map((row) => ({
        key: row.authority,
        cells: [
          row.authority,
          <Money key="month" cents={row.monthCents} />,
          <Money key="held" cents={row.heldCents} />,
        ],
      }))}
      foot={['Sum', <Money key="month" cents={added} />, <Money key="held" cents={held} />]}
    />
  );
}
