import { Field } from '@/app/ui/form/field';
import type { BatchTold } from '@/lib/commissions/reads/colours/studio';
import { PictureField } from '../../picture-field';
import css from '../../commissions.module.css';

type TileFieldsProps = Readonly<{
  bodies: readonly { id: string; name: string }[];
  batches: readonly BatchTold[];
  areas: readonly string[];
}>;

/** A tile as it is fired: its glazes, body, cone, what it is for, and its range from light to dark. */
export function TileFields({ bodies, batches, areas }: TileFieldsProps) {
  return (
    <>
      <PictureField name="picture" label="The tile, the middle of its range" />
      <Field
        name="glazes"
        label="Glazes in their order"
        hint="As on the back of the tile."
        placeholder="Iron slip, celadon"
      />
      <Field
        name="forAreas"
        label="For which areas"
        hint={
          areas.length > 0
            ? `With commas between. The sketch has: ${areas.join(', ')}.`
            : 'With commas between; as they are called in the sketch.'
        }
        optional
      />
      <div className={css['pair']}>
        <Field name="coats" label="Coats" kind="count" width="short" optional />
        <Field name="cone" label="Cone" hint="Such as 6 or 04." width="short" optional />
        <Field name="firing" label="Number in the firing log" width="short" optional />
      </div>
      <Field
        name="bodyId"
        label="Clay body"
        kind="select"
        options={[
          { value: '', label: 'not known yet' },
          ...bodies.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        defaultValue=""
      />
      <Field
        name="batchId"
        label="Bucket of glaze"
        hint="It is kept for this commission from then on."
        kind="select"
        options={[
          { value: '', label: 'none written down' },
          ...batches.map(({ id, number, glaze, keptFor }) => ({
            value: id,
            label: `${number}, ${glaze}${keptFor ? ` (kept for commission ${keptFor.number})` : ''}`,
          })),
        ]}
        defaultValue=""
      />
      <Field name="keptAt" label="Where the studio keeps its set" width="half" optional />
      <Range />
    </>
  );
}

function Range() {
  return (
    <details>
      <summary>The range it was fired in: light, middle, dark, and what was measured</summary>
      <p className={css['quiet']}>
        Three figures from an instrument, L* a* b* under D50. A picture is no measure: leave it
        empty where none was taken.
      </p>
      <PictureField name="lightPicture" label="The lightest" optional />
      <Field name="light" label="Lightest, measured" placeholder="62.4 -7.1 9.8" optional />
      <Field name="middle" label="Middle, measured" placeholder="55.2 -8.0 10.6" optional />
      <PictureField name="darkPicture" label="The darkest" optional />
      <Field name="dark" label="Darkest, measured" placeholder="47.9 -8.6 11.2" optional />
    </details>
  );
}
