import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import type { OrderWish } from '@/lib/orders/input';
import type { previewOrder } from '@/lib/orders/reads/preview';
import { techniques, techniqueWords } from '@/lib/studio/rules/routes';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import css from '../orders.module.css';

/** What the page knows of the piece that is ordered. */
export type ShownOrder = NonNullable<Awaited<ReturnType<typeof previewOrder>>>;

type WishFormProps = Readonly<{ wish: OrderWish; shown: ShownOrder; unit: LengthSystem }>;

/** How it is wanted: looked at again with every change, before anything is written. */
export function WishForm({ wish, shown, unit }: WishFormProps) {
  const { piece, choices, before } = shown;
  const ways = techniques.map((value) => ({ value, label: techniqueWords[value] }));
  const colourways = choices.colourways.map(({ id, name, hasEnded }) => ({
    value: id,
    label: hasEnded ? `${name} (no longer made)` : name,
  }));
  const sizes = choices.sizes.map((size) => ({
    value: `${size.widthUm}x${size.heightUm}`,
    label: formatSize({ ...size, depthUm: null }, unit),
  }));
  return (
    <form action="/orders/new" className={css['wish']} aria-label="How it is wanted">
      <input type="hidden" name="sku" value={piece.code} />
      {wish.collector ? <input type="hidden" name="collector" value={wish.collector} /> : null}
      <Field
        name="quantity"
        label="How many"
        kind="count"
        size="counter"
        defaultValue={`${wish.quantity}`}
      />
      <Field
        name="colourway"
        label="In which glazes"
        kind="select"
        size="counter"
        options={colourways}
        defaultValue={wish.colourway ?? piece.colourwayId}
      />
      <Field
        name="size"
        label="How large"
        kind="select"
        size="counter"
        options={sizes}
        defaultValue={wish.size ?? `${piece.widthUm}x${piece.heightUm}`}
      />
      <Field
        name="technique"
        label="How it is made"
        kind="select"
        size="counter"
        options={ways}
        defaultValue={before.technique}
      />
      <Field
        name="wantedOn"
        label="Needed by"
        kind="day"
        size="counter"
        defaultValue={wish.wantedOn ?? ''}
        optional
      />
      <Button type="submit" variant="quiet" size="counter">
        Look again
      </Button>
    </form>
  );
}
