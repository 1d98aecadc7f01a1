import Link from 'next/link';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { formatMonth } from '@/lib/dates/rules';
import type { MonthByDesign } from '@/lib/reports/reads';
import { shareWords } from '@/lib/reports/rules';

/** The month by design as a table; each figure opens to the sale lines behind it. */
export function DesignTable({ report }: Readonly<{ report: MonthByDesign }>) {
  const { month, designs, commissions, other, broughtBack, units, netCents } = report;
  const rows = designs.map((design) => ({
    key: design.code,
    cells: cellsOf(`/month/${design.code}?month=${month}`, <cite>{design.title}</cite>, design),
  }));
  const beside = [
    { key: 'commissions', name: 'Commissions handed over', line: commissions },
    { key: 'other', name: 'Delivery, work and things typed in', line: other },
    { key: 'back', name: 'Brought back', line: broughtBack },
  ].flatMap(({ key, name, line }) =>
    line ? [{ key: ` ${key}`, cells: cellsOf(`/month/${key}?month=${month}`, name, line) }] : [],
  );
  return (
    <Table
      caption={`${formatMonth(month)} by design`}
      captionHeardOnly
      columns={[
        { name: 'Design' },
        { name: 'Pieces', figure: true },
        { name: 'Net', figure: true },
        { name: 'Share', figure: true },
      ]}
      rows={[...rows, ...beside]}
      foot={['Together', units, <Money key="net" cents={netCents} size="strong" />, '100.0 %']}
    />
  );
}

function cellsOf(
  href: string,
  name: React.ReactNode,
  line: { units: number; netCents: bigint; shareTenths?: number },
) {
  return [
    <Link key="name" href={href}>
      {name}
    </Link>,
    line.units,
    <Money key="net" cents={line.netCents} />,
    line.shareTenths === undefined ? '' : shareWords(line.shareTenths),
  ];
}
