import type { ReactNode } from 'react';
import { classes } from '@/app/ui/classes';
import { Picture, type PictureShown } from './picture';
import { WallLabel, type WallLabelProps } from './wall-label';
import css from './piece.module.css';

type PieceHangingProps = WallLabelProps & Readonly<{ picture: PictureShown | null }>;

/** A piece on the wall: its picture, and its label under the picture's left edge. */
export function PieceHanging({ picture, ...label }: PieceHangingProps) {
  return (
    <article className={css['hanging']}>
      {picture ? (
        <Picture {...picture} size="hung" />
      ) : (
        <div className={css['no-picture']}>no picture yet</div>
      )}
      <WallLabel {...label} />
    </article>
  );
}

type WallProps = Readonly<{
  children: ReactNode;
  label?: string | undefined;
  /** `close` hangs small things near one another. */
  spacing?: 'wide' | 'close' | undefined;
}>;

/** A stretch of wall: what hangs on it stands on common baselines. One {@link Hung} each. */
export function Wall({ children, label, spacing }: WallProps) {
  return (
    <ul className={classes(css['wall'], spacing === 'close' && css['close'])} aria-label={label}>
      {children}
    </ul>
  );
}

/** One place on a {@link Wall}. */
export function Hung({ children }: Readonly<{ children: ReactNode }>) {
  return <li className={css['hung-place']}>{children}</li>;
}
