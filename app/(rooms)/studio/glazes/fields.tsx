import { PictureField } from '@/app/(rooms)/commissions/picture-field';
import { Field } from '@/app/ui/form/field';
import type { Lab } from '@/lib/colour/rules';
import { recipeAsTyped } from '@/lib/glazes/rules/typed-recipe';
import type { RecipeMaterial } from '@/lib/glazes/rules/recipe';
import { cones } from '@/lib/studio/rules/kilns/cones';
import css from './glazes.module.css';

const coneOptions = cones.map((cone) => ({ value: cone, label: `cone ${cone}` }));

/** How a glaze or a tile of it is laid on and fired. */
export function LaidOn({ cone, coats }: Readonly<{ cone: string; coats: number }>) {
  return (
    <div className={css['pair']}>
      <Field
        name="cone"
        label="Cone"
        kind="select"
        options={coneOptions}
        defaultValue={cone}
        width="short"
      />
      <Field
        name="coats"
        label="Coats"
        kind="count"
        defaultValue={`${coats}`}
        width="short"
        required
      />
    </div>
  );
}

/** Its two pictures and its measured colour; what is not known yet stays empty. */
export function LooksFields({ lab, kept }: Readonly<{ lab: Lab | null; kept?: boolean }>) {
  const hint = kept ? 'Leave it empty to keep the picture that is there.' : undefined;
  return (
    <>
      <PictureField name="fired" label="Its picture, fired" hint={hint} optional />
      <PictureField name="raw" label="Its picture, raw" hint={hint} optional />
      <Field
        name="lab"
        label="Its colour, measured"
        hint="Three figures from an instrument, L* a* b* under D50. A picture is no measure."
        placeholder="62.4 -7.1 9.8"
        defaultValue={lab?.join(' ') ?? ''}
        width="half"
        optional
      />
    </>
  );
}

/** A recipe as it is typed: the base, and what goes on top of it. */
export function RecipeFields({
  materials,
  optional,
}: Readonly<{ materials: readonly RecipeMaterial[]; optional?: boolean }>) {
  return (
    <>
      <Field
        name="base"
        label="The base"
        kind="textarea"
        rows={7}
        hint="One material in each line, its amount at the end: Silica 22.5. Grams or percent, all the same; it is brought to 100."
        defaultValue={recipeAsTyped(materials, 'base')}
        optional={optional}
      />
      <Field
        name="additions"
        label="On top of it"
        kind="textarea"
        rows={3}
        hint="Colourants and opacifiers, in the same unit as the base: Red iron oxide 2."
        defaultValue={recipeAsTyped(materials, 'additions')}
        optional
      />
    </>
  );
}
