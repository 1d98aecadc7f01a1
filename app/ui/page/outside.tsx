import type { ReactNode } from 'react';
import css from './page.module.css';

/** A page of its own with few words in the middle of the wall: signing in, nothing here, a fault. */
export function Outside({ title, children }: Readonly<{ title: string; children: ReactNode }>) {
  return (
    <main className={css['outside']} id="wall">
      <h1 className={css['title']}>{title}</h1>
      {children}
    </main>
  );
}
