import { useId, useState } from 'react';
import { Button } from '@/app/ui/button/button';
import type { TileWallBoard } from './use-tile-wall';
import css from '../tiles.module.css';

/** Which set tile is put where the wall is touched, and what becomes of the one that is chosen. */
export function SetTools({ board }: Readonly<{ board: TileWallBoard }>) {
  const { sets, chosen, takeAway, takeAllAway } = board;
  const one = chosen === null ? null : sets[chosen];
  return (
    <div className={css['group']}>
      <h2>Set tiles</h2>
      {one && chosen !== null ? (
        <>
          <p>
            Chosen is {chosen + 1}: {one.name}. Touch another tile to move it there.
          </p>
          <Button variant="danger" onClick={takeAway}>
            Take it away
          </Button>
        </>
      ) : (
        <BrushFields board={board} />
      )}
      <ByNumbers board={board} />
      {sets.length > 1 ? (
        <Button variant="quiet" onClick={takeAllAway}>
          Take all {sets.length} away
        </Button>
      ) : null}
    </div>
  );
}

const counts = [1, 2, 3, 4, 5, 6];

function BrushFields({ board: { brush, setBrush } }: Readonly<{ board: TileWallBoard }>) {
  const id = useId();
  return (
    <>
      <label htmlFor={`${id}-name`}>Name of what is put where you touch</label>
      <input
        id={`${id}-name`}
        className={css['typed']}
        value={brush.name}
        maxLength={60}
        onChange={(event) => setBrush({ ...brush, name: event.target.value })}
      />
      <div className={css['two']}>
        <label htmlFor={`${id}-across`}>Tiles wide</label>
        <label htmlFor={`${id}-down`}>Tiles high</label>
        {(['across', 'down'] as const).map((side) => (
          <select
            key={side}
            id={`${id}-${side}`}
            className={css['typed']}
            value={brush[side]}
            onChange={(event) => setBrush({ ...brush, [side]: Number(event.target.value) })}
          >
            {counts.map((count) => (
              <option key={count}>{count}</option>
            ))}
          </select>
        ))}
      </div>
    </>
  );
}

/** The same without touching the drawing: by column and row. */
function ByNumbers({ board: { put, chosen } }: Readonly<{ board: TileWallBoard }>) {
  const id = useId();
  const [column, setColumn] = useState('1');
  const [row, setRow] = useState('1');
  return (
    <details className={css['fold']}>
      <summary>By column and row instead</summary>
      <div className={css['two']}>
        <label htmlFor={`${id}-column`}>Column from the left</label>
        <label htmlFor={`${id}-row`}>Row from below</label>
        <input
          id={`${id}-column`}
          className={css['typed']}
          inputMode="numeric"
          value={column}
          onChange={(event) => setColumn(event.target.value)}
        />
        <input
          id={`${id}-row`}
          className={css['typed']}
          inputMode="numeric"
          value={row}
          onChange={(event) => setRow(event.target.value)}
        />
      </div>
      <Button variant="quiet" onClick={() => put(placeOf(column), placeOf(row))}>
        {chosen === null ? 'Put one there' : 'Move it there'}
      </Button>
    </details>
  );
}

/** Counted from 1 on the wall, and from 0 behind it; what is no number lies outside. */
function placeOf(text: string): number {
  return /^\d{1,4}$/.test(text.trim()) ? Number(text) - 1 : -1;
}
