'use client';

import { useId, useState } from 'react';
import { Button } from '@/app/ui/button/button';
import type { DrawingAct, DrawnAround } from './drawing-state';
import css from './draw.module.css';

type BeginGridProps = Readonly<{
  act: (act: DrawingAct) => void;
  around: DrawnAround;
  hasParts: boolean;
}>;

/** Begins a drawing with rows and columns of one size; what was drawn before can be had back by undo. */
export function BeginGrid({ act, around, hasParts }: BeginGridProps) {
  const id = useId();
  const [rows, setRows] = useState('6');
  const [columns, setColumns] = useState('10');
  const [isOffset, setIsOffset] = useState(false);
  const begin = () =>
    act({ do: 'grid', rows: Number(rows), columns: Number(columns), isOffset, around });
  return (
    <details className={css['grid']} open={!hasParts}>
      <summary>Begin from a grid</summary>
      <div className={css['grid-fields']}>
        <label htmlFor={`${id}-rows`}>Rows</label>
        <input
          id={`${id}-rows`}
          className={css['typed']}
          inputMode="numeric"
          value={rows}
          onChange={(event) => setRows(event.target.value)}
        />
        <label htmlFor={`${id}-columns`}>Columns</label>
        <input
          id={`${id}-columns`}
          className={css['typed']}
          inputMode="numeric"
          value={columns}
          onChange={(event) => setColumns(event.target.value)}
        />
      </div>
      <label className={css['tick']}>
        <input
          type="checkbox"
          checked={isOffset}
          onChange={(event) => setIsOffset(event.target.checked)}
        />
        Every second row begins with a half one, as bricks are laid
      </label>
      <Button variant="quiet" size="counter" onClick={begin}>
        {hasParts ? 'Lay this grid in place of what is drawn' : 'Lay the grid'}
      </Button>
    </details>
  );
}
