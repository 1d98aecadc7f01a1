'use client';

import { useReducer } from 'react';
import { Button } from '@/app/ui/button/button';
import { useFieldAnswer } from '@/app/ui/form/form-answer';
import type { FieldOption } from '@/app/ui/form/field-props';
import type { RouteStep } from '@/lib/studio/rules/routes';
import { StepRow } from './step-row';
import css from './routes.module.css';

type StepRowsProps = Readonly<{
  steps: readonly RouteStep[];
  benches: readonly FieldOption[];
}>;

type Row = Readonly<{ key: number; step: RouteStep | null }>;
type Act = Readonly<{ key: number; what: 'up' | 'down' | 'add' | 'remove' }>;

/** The steps of a route in their order; rows are added, moved and taken out. */
export function StepRows({ steps, benches }: StepRowsProps) {
  const answered = useFieldAnswer('rows');
  const [rows, act] = useReducer(change, begun(steps, answered.typed));
  return (
    <div className={css['rows']}>
      <input type="hidden" name="rows" value={rows.map((row) => row.key).join(',')} />
      {rows.map((row, at) => (
        <StepRow
          key={row.key}
          row={String(row.key)}
          place={at + 1}
          step={row.step}
          benches={benches}
          acts={
            <>
              <Button variant="quiet" onClick={() => act({ key: row.key, what: 'add' })}>
                Add a step after it
              </Button>
              <Button
                variant="quiet"
                disabled={at === 0}
                onClick={() => act({ key: row.key, what: 'up' })}
              >
                Earlier
              </Button>
              <Button
                variant="quiet"
                disabled={at === rows.length - 1}
                onClick={() => act({ key: row.key, what: 'down' })}
              >
                Later
              </Button>
              <Button
                variant="quiet"
                disabled={rows.length === 1}
                onClick={() => act({ key: row.key, what: 'remove' })}
              >
                Take it out
              </Button>
            </>
          }
        />
      ))}
    </div>
  );
}

/** The rows of the route, in the order that was typed when the form comes back. */
function begun(steps: readonly RouteStep[], typed: string | undefined): Row[] {
  const rows = steps.map((step, key): Row => ({ key, step }));
  if (!typed) return rows.length > 0 ? rows : [{ key: 0, step: null }];
  return typed.split(',').map((key) => rows[Number(key)] ?? { key: Number(key), step: null });
}

function change(rows: Row[], { key, what }: Act): Row[] {
  const at = rows.findIndex((row) => row.key === key);
  const row = rows[at];
  if (!row) return rows;
  const without = rows.filter((one) => one !== row);
  switch (what) {
    case 'remove':
      return without;
    case 'up':
      return without.toSpliced(at - 1, 0, row);
    case 'down':
      return without.toSpliced(at + 1, 0, row);
    case 'add': {
      const next = Math.max(...rows.map((one) => one.key)) + 1;
      return rows.toSpliced(at + 1, 0, { key: next, step: null });
    }
  }
}
