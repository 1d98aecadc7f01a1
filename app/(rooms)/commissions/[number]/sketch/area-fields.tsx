import { Field } from '@/app/ui/form/field';
import { areasMost } from '@/lib/commissions/input/colours/showing';
import { placeNames, places } from '@/lib/commissions/rules/colours/places';
import css from '../../commissions.module.css';

const numbers = Array.from({ length: areasMost }, (_none, at) => at + 1);
const options = placeNames.map((value) => ({ value, label: places[value].words }));

/** The colour areas of a sketch: each a name, and about where it lies. */
export function AreaFields() {
  return (
    <fieldset className={css['pairs']}>
      <legend>Colour areas</legend>
      <p className={css['quiet']}>
        Each area that gets a colour of its own, such as Sky or Water. A tile is made for it by its
        name.
      </p>
      {numbers.map((number) => (
        <div key={number} className={css['pair']}>
          <Field name={`areaName${number}`} label={`Area ${number}`} optional maxLength={60} />
          <Field
            name={`areaPlace${number}`}
            label="Where it lies"
            kind="select"
            options={options}
            defaultValue="middle"
          />
        </div>
      ))}
    </fieldset>
  );
}
