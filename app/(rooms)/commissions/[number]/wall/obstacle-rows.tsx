'use client';

import { useState } from 'react';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import { useFieldAnswer } from '@/app/ui/form/form-answer';
import { obstacleField, obstaclesMost } from '@/lib/installation/rules/survey/obstacle-fields';
import type { LengthSystem } from '@/lib/units/rules';
import { obstacleKinds, obstacleWords, type Obstacle } from '@/lib/walls/rules/plan/wall';
import { measureText } from './texts';
import css from '../../commissions.module.css';

type ObstacleRowsProps = Readonly<{ obstacles: readonly Obstacle[]; unit: LengthSystem }>;

const kinds = [
  { value: '', label: 'nothing' },
  ...obstacleKinds.map((value) => ({ value, label: obstacleWords[value] })),
];
/** How many empty rows there are at first, so that the form works without a script. */
const empty = 2;

/** What is on the wall and in it, a row for each. */
export function ObstacleRows({ obstacles, unit }: ObstacleRowsProps) {
  const typed = Number(useFieldAnswer('rows').typed ?? 0);
  const [many, setMany] = useState(Math.min(obstacles.length + empty, obstaclesMost));
  const rows = Math.max(many, typed);
  return (
    <div className={css['history']}>
      <input type="hidden" name="rows" value={rows} />
      {Array.from({ length: rows }, (_, row) => (
        <ObstacleRow key={row} row={row} obstacle={obstacles[row]} unit={unit} />
      ))}
      {rows < obstaclesMost ? (
        <p>
          <Button type="button" variant="quiet" onClick={() => setMany(rows + 1)}>
            One more thing on the wall
          </Button>
        </p>
      ) : null}
    </div>
  );
}

type RowProps = Readonly<{ row: number; obstacle: Obstacle | undefined; unit: LengthSystem }>;

function ObstacleRow({ row, obstacle, unit }: RowProps) {
  const measure = { kind: 'measure', width: 'short', unit } as const;
  return (
    <fieldset className={css['pairs']}>
      <legend>{row + 1}</legend>
      <div className={css['pair']}>
        <Field
          name={obstacleField(row, 'kind')}
          label="What it is"
          kind="select"
          options={kinds}
          defaultValue={obstacle?.kind ?? ''}
        />
        <Field
          name={obstacleField(row, 'words')}
          label="In words"
          defaultValue={obstacle?.words ?? ''}
          maxLength={120}
        />
        <Field
          {...measure}
          name={obstacleField(row, 'leftUm')}
          label="From the left end"
          defaultValue={measureText(obstacle?.leftUm, unit)}
        />
        <Field
          {...measure}
          name={obstacleField(row, 'bottomUm')}
          label="From the floor"
          defaultValue={measureText(obstacle?.bottomUm, unit)}
        />
        <Field
          {...measure}
          name={obstacleField(row, 'widthUm')}
          label="Wide"
          defaultValue={measureText(obstacle?.widthUm, unit)}
        />
        <Field
          {...measure}
          name={obstacleField(row, 'heightUm')}
          label="High"
          defaultValue={measureText(obstacle?.heightUm, unit)}
        />
      </div>
    </fieldset>
  );
}
