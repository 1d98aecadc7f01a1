import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import css from './stock.module.css';

/** Finds a piece by a few letters, its SKU or its barcode; a plain form that works everywhere. */
export function FindPiece({ find, kind }: Readonly<{ find: string; kind: string }>) {
  return (
    <form method="get" action="/stock" role="search" className={css['find']}>
      {kind === '' ? null : <input type="hidden" name="kind" value={kind} />}
      <Field
        name="find"
        label="Find a piece"
        kind="search"
        defaultValue={find}
        maxLength={80}
        placeholder="Three letters, a SKU, a barcode"
        autoComplete="off"
      />
      <Button type="submit" variant="quiet">
        Find
      </Button>
    </form>
  );
}
