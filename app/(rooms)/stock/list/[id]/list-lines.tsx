import { Table } from '@/app/ui/figures/table';
import { kindWords } from '@/lib/catalogue/rules';
import { formatCents } from '@/lib/money/rules';
import type { PlannedRow } from '@/lib/stock/rules/list-plan';
import { changeWords } from '@/lib/stock/rules/list-summary';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import css from '../../stock.module.css';

type ListLinesProps = Readonly<{ lines: readonly PlannedRow[]; system: LengthSystem }>;

const verdictWords = { new: 'new', changed: 'changed', same: 'the same', refused: 'refused' };

/** The lines of a list: what each would do, and why a refused one was refused. */
export function ListLines({ lines, system }: ListLinesProps) {
  return (
    <Table
      caption="The lines of the list"
      captionHeardOnly
      columns={[
        { name: 'Line', figure: true },
        { name: 'Code' },
        { name: 'It is' },
        { name: 'What that means' },
      ]}
      rows={lines.map((row) => ({
        key: String(row.line),
        cells: [
          row.line,
          row.code === '' ? <span className={css['quiet']}>none</span> : row.code,
          verdictWords[row.verdict],
          <Meaning key="meaning" row={row} system={system} />,
        ],
      }))}
    />
  );
}

function Meaning({ row, system }: Readonly<{ row: PlannedRow; system: LengthSystem }>) {
  switch (row.verdict) {
    case 'same':
      return null;
    case 'new':
      return newWords(row, system);
    case 'changed':
      return row.changes.map((change) => changeWords(change, system)).join('; ');
    case 'refused':
      return (
        <ul className={css['reasons']}>
          {row.faults.map((fault) => (
            <li key={`${fault.column} ${fault.sentence}`}>
              <span className={css['column']}>{fault.column}: </span>
              {fault.sentence}
            </li>
          ))}
        </ul>
      );
  }
}

function newWords(row: Extract<PlannedRow, { verdict: 'new' }>, system: LengthSystem): string {
  const { title, kind, colourway, priceCents } = row.piece;
  const what = `${kindWords(kind)}, ${colourway}, ${formatSize(row.piece, system)}`;
  return `${title}: ${what}, ${formatCents(priceCents)}, ${row.here} here`;
}
