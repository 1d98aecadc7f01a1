import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { tilePlaces } from '@/lib/walls/rules/tiles/asked';
import { placeTitles } from '@/lib/walls/rules/tiles/cautions';
import type { Faults, WallTyped } from './wall-typed';
import css from '../tiles.module.css';

type MeasureFieldsProps = Readonly<{ first: WallTyped; faults: Faults }>;

/** The wall, the field tile and its joint, and what is asked of the tiles beside looks. */
export function MeasureFields({ first, faults }: MeasureFieldsProps) {
  const measure = (name: 'width' | 'height' | 'tileWidth' | 'tileHeight', label: string) => (
    <Field
      name={name}
      label={label}
      kind="measure"
      defaultValue={first[name]}
      fault={faults[name]}
    />
  );
  return (
    <>
      <div className={css['two']}>
        {measure('width', 'Width to be tiled')}
        {measure('height', 'Height to be tiled')}
        {measure('tileWidth', 'Field tile, width')}
        {measure('tileHeight', 'Field tile, height')}
      </div>
      <Field
        name="joint"
        label="Joint"
        kind="measure"
        hint="Hand-made tile: 3/16 in (4.8 mm) or more."
        width="half"
        defaultValue={first.joint}
        fault={faults['joint']}
      />
      <Choice
        name="isHandMade"
        kind="tick"
        legend="The field tile"
        options={[{ value: 'yes', label: 'It is made by hand, and differs' }]}
        defaultValue={first.isHandMade ? 'yes' : ''}
      />
      <Field
        name="variation"
        label="How much the widest is wider than the narrowest"
        hint="The joint is three times that, or more."
        kind="measure"
        width="half"
        defaultValue={first.variation}
        fault={faults['variation']}
        optional
      />
      <Choice
        name="rowsFrom"
        legend="Rows"
        layout="down"
        options={[
          { value: 'bottom', label: 'A whole row at the bottom', hint: 'over a counter' },
          { value: 'middle', label: 'Cut alike above and below' },
        ]}
        defaultValue={first.rowsFrom}
      />
      <SpareFields first={first} faults={faults} />
      <Choice
        name="places"
        kind="tick"
        legend="Where it is"
        layout="down"
        options={tilePlaces.map((value) => ({ value, label: placeTitles[value] }))}
        defaultValue={first.places.join(',')}
      />
    </>
  );
}

function SpareFields({ first, faults }: MeasureFieldsProps) {
  return (
    <div className={css['two']}>
      <Field
        name="spare"
        label="Spare field tiles"
        kind="percent"
        defaultValue={first.spare}
        fault={faults['spare']}
      />
      <Field
        name="setSpare"
        label="Spare set tiles"
        kind="percent"
        defaultValue={first.setSpare}
        fault={faults['setSpare']}
      />
    </div>
  );
}
