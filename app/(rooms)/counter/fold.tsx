import type { ReactNode } from 'react';
import css from './counter.module.css';

type FoldProps = Readonly<{
  name: string;
  /** What is on the slip of it already, in a few words. */
  now?: string | undefined;
  children: ReactNode;
}>;

/** Something that a simple sale does not need: folded away until it is touched. */
export function Fold({ name, now, children }: FoldProps) {
  return (
    <details className={css['fold']}>
      <summary>
        {name}
        {now ? <span className={css['quiet']}> {now}</span> : null}
      </summary>
      <div className={css['folded']}>{children}</div>
    </details>
  );
}
