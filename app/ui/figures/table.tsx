import type { ReactNode } from 'react';
import css from './table.module.css';

/** A column; `figure` ranges its cells right, in figures of one width. */
export type Column = Readonly<{
  name: string;
  figure?: boolean | undefined;
  /** Left out on a phone, because the row is understood without it. */
  wideOnly?: boolean | undefined;
}>;

/** A row: its cells in the columns' order. The first cell is the row's name. */
export type Row = Readonly<{ key: string; cells: readonly ReactNode[] }>;

type TableProps = Readonly<{
  caption: string;
  captionHeardOnly?: boolean | undefined;
  columns: readonly Column[];
  rows: readonly Row[];
  foot?: readonly ReactNode[] | undefined;
}>;

/** A plain table, its figures ranged right. On a narrow page it scrolls inside itself. */
export function Table({ caption, captionHeardOnly, columns, rows, foot }: TableProps) {
  return (
    <div className={css['scroll']} tabIndex={0} role="region" aria-label={caption}>
      <table className={css['table']}>
        <caption className={captionHeardOnly ? 'heard-only' : undefined}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.name} scope="col" {...cellMarks(column)}>
                {column.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>{cellsOf(row.cells, columns)}</tr>
          ))}
        </tbody>
        {foot ? (
          <tfoot>
            <tr>{cellsOf(foot, columns)}</tr>
          </tfoot>
        ) : null}
      </table>
    </div>
  );
}

function cellMarks(column: Column | undefined) {
  return {
    'data-figure': column?.figure || undefined,
    'data-wide-only': column?.wideOnly || undefined,
  };
}

function cellsOf(cells: readonly ReactNode[], columns: readonly Column[]) {
  return cells.map((cell, at) => {
    const column = columns[at];
    const key = column?.name ?? at;
    return at === 0 ? (
      <th key={key} scope="row" {...cellMarks(column)}>
        {cell}
      </th>
    ) : (
      <td key={key} {...cellMarks(column)}>
        {cell}
      </td>
    );
  });
}
