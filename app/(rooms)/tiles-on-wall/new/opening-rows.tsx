import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import { openingKinds } from '@/lib/walls/rules/tiles/asked';
import { openingWords } from '@/lib/walls/rules/tiles/words';
import type { TileWallBoard } from './use-tile-wall';
import type { OpeningTyped } from './wall-typed';
import css from '../tiles.module.css';

/** Outlets, windows and other places without tiles, from the lower left corner. */
export function OpeningRows({ board }: Readonly<{ board: TileWallBoard }>) {
  const { typed, faults, addOpening, dropOpening } = board;
  return (
    <div className={css['group']}>
      <h2>Outlets and windows</h2>
      <p className={css['quiet']}>Measured from the lower left corner of the tiles.</p>
      {typed.openings.map((opening, at) => (
        <OneOpening key={opening.id} {...{ opening, at, faults, dropOpening }} />
      ))}
      <Button variant="quiet" onClick={addOpening}>
        Add an opening
      </Button>
    </div>
  );
}

type OneOpeningProps = Pick<TileWallBoard, 'faults' | 'dropOpening'> &
  Readonly<{ opening: OpeningTyped; at: number }>;

function OneOpening({ opening, at, faults, dropOpening }: OneOpeningProps) {
  const { id, kind } = opening;
  const fields = [
    { name: 'left', label: 'From the left', first: opening.left },
    { name: 'bottom', label: 'Up from the bottom', first: opening.bottom },
    { name: 'width', label: 'Width', first: opening.width },
    { name: 'height', label: 'Height', first: opening.height },
  ];
  return (
    <fieldset className={css['group']}>
      <legend>Opening {at + 1}</legend>
      <Field
        name={`kind${id}`}
        label="What it is"
        kind="select"
        options={openingKinds.map((value) => ({ value, label: openingWords[value] }))}
        defaultValue={kind}
      />
      <div className={css['two']}>
        {fields.map(({ name, label, first }) => (
          <Field
            key={name}
            name={`${name}${id}`}
            label={label}
            kind="measure"
            defaultValue={first}
            fault={faults[`${name}${id}`]}
          />
        ))}
      </div>
      <Button variant="danger" onClick={() => dropOpening(id)}>
        Take opening {at + 1} away
      </Button>
    </fieldset>
  );
}
