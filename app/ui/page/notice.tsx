import type { ReactNode } from 'react';
import { classes } from '@/app/ui/classes';
import css from './page.module.css';

type NoticeProps = Readonly<{
  kind: 'done' | 'refused' | 'caution';
  children: ReactNode;
  title?: string | undefined;
}>;

const marks = { done: '✓', refused: '✕', caution: '!' } as const;

/** Says what happened: done, not done and why, or mind this. Read out when it appears. */
export function Notice({ kind, children, title }: NoticeProps) {
  return (
    <div
      className={classes(css['notice'], css[kind])}
      role={kind === 'refused' ? 'alert' : 'status'}
    >
      <span className={css['mark']} aria-hidden="true">
        {marks[kind]}
      </span>
      <div>
        {title ? <strong className={css['notice-title']}>{title}</strong> : null}
        <div>{children}</div>
      </div>
    </div>
  );
}
