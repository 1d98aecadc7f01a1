import type { ReactNode } from 'react';
import css from './page.module.css';

type EmptyProps = Readonly<{
  title: string;
  children: ReactNode;
  act?: ReactNode;
}>;

/** A bare wall: says what will hang here and how the first one gets here. */
export function Empty({ title, children, act }: EmptyProps) {
  return (
    <div className={css['empty']}>
      <h2>{title}</h2>
      <p>{children}</p>
      {act ? <div className={css['acts']}>{act}</div> : null}
    </div>
  );
}
