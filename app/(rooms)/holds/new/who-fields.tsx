import { Field } from '@/app/ui/form/field';
import css from '../holds.module.css';

/** A collector as these forms need to know them. */
export type KnownCollector = Readonly<{ id: string; name: string; phone: string | null }>;

/** For whom: somebody from the address book, or a name and a telephone number. */
export function WhoFields({ collector }: Readonly<{ collector: KnownCollector | null }>) {
  return (
    <>
      <input type="hidden" name="collectorId" value={collector?.id ?? ''} />
      <div className={css['pair']}>
        <Field
          name="forWhom"
          label="For whom"
          size="counter"
          defaultValue={collector?.name ?? ''}
          autoComplete="off"
          maxLength={120}
          required
        />
        <Field
          name="phone"
          label="Telephone"
          kind="telephone"
          size="counter"
          defaultValue={collector?.phone ?? ''}
          autoComplete="off"
          optional
        />
      </div>
    </>
  );
}
