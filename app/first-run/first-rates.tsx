import { Field } from '@/app/ui/form/field';
import { Caution } from '@/app/ui/page/caution';
import { firstRates } from '@/lib/access/input/set-up';
import css from './first-run.module.css';

/** The sales tax of the place, by authority; may be left empty and kept in the settings later. */
export function FirstRates() {
  const rows = Array.from({ length: firstRates }, (_, at) => at + 1);
  return (
    <fieldset className={css['part']}>
      <legend>Sales tax at the gallery</legend>
      <p>
        One line for each authority: the state, the county, the town. Leave it empty if you would
        rather look it up first; nothing can be sold at the counter before it is there.
      </p>
      {rows.map((row) => (
        <div key={row} className={css['rate']}>
          <Field
            name={`authority${row}`}
            label={row === 1 ? 'Authority' : `Authority ${row}`}
            labelHeardOnly={row > 1}
            width="half"
          />
          <Field
            name={`rate${row}`}
            label={row === 1 ? 'Rate' : `Rate ${row}`}
            labelHeardOnly={row > 1}
            kind="percent"
            width="short"
          />
        </div>
      ))}
      <Caution>the tool works the tax out; a tax adviser says which rates are yours.</Caution>
    </fieldset>
  );
}
