import type { ReactNode } from 'react';
import { Table } from '@/app/ui/figures/table';
import type { FilePlan } from '@/lib/data/reads/plan-file';
import type { PlannedPerson } from '@/lib/data/rules/people';
import type { PlannedSale } from '@/lib/data/rules/sales';
import { formatInstant } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import css from '../../data.module.css';

type FileLinesProps = Readonly<{
  planned: FilePlan;
  from: number;
  most: number;
  zone: string;
}>;

const verdictWords = { new: 'new', changed: 'changed', same: 'the same', refused: 'refused' };
const verdictOrder = { refused: 0, new: 1, changed: 1, same: 2 };

/** The lines of a file: what each would do, and why a refused one was refused. Those come first. */
export function FileLines({ planned, from, most, zone }: FileLinesProps) {
  const rows: readonly (PlannedPerson | PlannedSale)[] = planned.plan;
  const shown = rows
    .toSorted((a, b) => verdictOrder[a.verdict] - verdictOrder[b.verdict] || a.line - b.line)
    .slice(from, from + most);
  return (
    <Table
      caption="The lines of the file"
      captionHeardOnly
      columns={[
        { name: 'Line', figure: true },
        { name: planned.kind === 'people' ? 'Name' : 'What was sold' },
        { name: 'It is' },
        { name: 'What that means' },
      ]}
      rows={shown.map((row) => ({
        key: String(row.line),
        cells: [row.line, nameOf(row.name), verdictWords[row.verdict], meaningOf(row, zone)],
      }))}
    />
  );
}

function nameOf(name: string): ReactNode {
  return name === '' ? <span className={css['quiet']}>none</span> : name;
}

function meaningOf(row: PlannedPerson | PlannedSale, zone: string): ReactNode {
  switch (row.verdict) {
    case 'same':
      return null;
    case 'changed':
      return `changes ${row.changes.join(', ')}`;
    case 'new':
      return 'sale' in row ? saleWords(row, zone) : (row.fields.email ?? row.fields.phone);
    case 'refused':
      return (
        <ul className={css['reasons']}>
          {row.faults.map((fault) => (
            <li key={`${fault.column} ${fault.sentence}`}>
              <span className={css['quiet']}>{fault.column}: </span>
              {fault.sentence}
            </li>
          ))}
        </ul>
      );
  }
}

function saleWords({ sale }: Extract<PlannedSale, { verdict: 'new' }>, zone: string): string {
  const lines = sale.lines.length === 1 ? '' : `, ${sale.lines.length} lines`;
  return `${formatInstant(sale.soldAt, zone)}, ${formatCents(sale.totalCents)}${lines}`;
}
