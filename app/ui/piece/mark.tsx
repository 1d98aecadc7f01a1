import css from './piece.module.css';

/** The marks of the trade on a label. */
export type PieceMark = 'sold' | 'held' | 'away';

const words = { sold: 'sold', held: 'held', away: 'away' } as const;

/** A red dot for sold, half a dot for held, a ring for away; always with its word. */
export function Mark({ mark, text }: Readonly<{ mark: PieceMark; text?: string | undefined }>) {
  return (
    <span className={css['mark']}>
      <span className={css['dot']} data-mark={mark} aria-hidden="true" />
      {text ?? words[mark]}
    </span>
  );
}
