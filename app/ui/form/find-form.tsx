import type { ReactNode } from 'react';
import { Button } from '@/app/ui/button/button';
import { Field } from './field';
import css from './form.module.css';

type FindFormProps = Readonly<{
  /** The page that shows what was found; it reads `name` from its address. */
  action: string;
  name?: string;
  label: string;
  letters: string;
  /** Hidden fields that go with it. */
  children?: ReactNode;
}>;

/** One field and one button that look something up; what is looked for stays in the address. */
export function FindForm({ action, name = 'find', label, letters, children }: FindFormProps) {
  return (
    <form action={action} role="search" className={css['find']}>
      <Field name={name} label={label} kind="search" defaultValue={letters} />
      {children}
      <Button type="submit" variant="quiet">
        Look
      </Button>
    </form>
  );
}
