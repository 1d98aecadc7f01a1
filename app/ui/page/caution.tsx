import type { ReactNode } from 'react';
import css from './page.module.css';

/** A caution of the trade, at the place of the act: steam, dust, weight, wires. Not an alarm. */
export function Caution({ children }: Readonly<{ children: ReactNode }>) {
  return (
    <p className={css['trade-caution']} role="note">
      <strong>Mind: </strong>
      {children}
    </p>
  );
}
