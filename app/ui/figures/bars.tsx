import type { ReactNode } from 'react';
import { Picture } from '@/app/ui/piece/picture';
import { BarDrawn, type Bar } from './bar-drawn';
import css from './bars.module.css';

type BarsProps = Readonly<{
  /** What the heights mean: "Earned by design, November 2026". */
  title: string;
  bars: readonly Bar[];
  /** The same figures as a table; one touch or key away. */
  table: ReactNode;
}>;

/** Bars that stand on a zero line, the piece at the foot of each and its figure on top. */
export function Bars({ title, bars, table }: BarsProps) {
  const most = Math.max(0, ...bars.map((bar) => bar.value));
  const least = Math.min(0, ...bars.map((bar) => bar.value));
  return (
    <figure className={css['figure']}>
      <figcaption className={css['title']}>{title}</figcaption>
      <div className={css['scroll']} tabIndex={0} role="region" aria-label={title}>
        <ol className={css['bars']}>
          {bars.map((bar) => (
            <li key={bar.key} className={css['bar']}>
              <BarDrawn bar={bar} most={most} least={least} />
              <BarFoot bar={bar} />
            </li>
          ))}
        </ol>
      </div>
      <details className={css['table']}>
        <summary>The same as a table</summary>
        {table}
      </details>
    </figure>
  );
}

/** The piece at the foot of its bar, and its name; both lead to it. */
function BarFoot({ bar }: Readonly<{ bar: Bar }>) {
  const inside = (
    <>
      {bar.picture ? <Picture {...bar.picture} alt="" size="thumb" /> : null}
      <span className={css['name']}>{bar.name}</span>
      <span className="heard-only">: {bar.text}</span>
    </>
  );
  if (!bar.href) return <div className={css['foot']}>{inside}</div>;
  return (
    <a href={bar.href} className={css['foot']}>
      {inside}
    </a>
  );
}
