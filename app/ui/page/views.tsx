import Link from 'next/link';
import css from './page.module.css';

/** One way to look at a list. */
export type View = Readonly<{ href: string; name: string; current: boolean; count?: number }>;

/** The ways to look at a list, as a row of links; the one chosen is pressed in. */
export function Views({ views, label }: Readonly<{ views: readonly View[]; label: string }>) {
  return (
    <nav aria-label={label} className="not-on-paper">
      <ul className={css['views']}>
        {views.map((view) => (
          <li key={view.href}>
            <Link href={view.href} aria-current={view.current ? 'true' : undefined}>
              {view.name}
              {view.count === undefined ? null : <span> {view.count}</span>}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
