import Link from 'next/link';
import type { ReactNode } from 'react';
import css from './views.module.css';

type AroundProps = Readonly<{
  title: string;
  before: { href: string; name: string };
  after: { href: string; name: string };
  children?: ReactNode;
}>;

/** The heading of a day, week or month, with the way to the one before and the one after. */
export function Around({ title, before, after, children }: AroundProps) {
  return (
    <div className={css['around']}>
      <Link href={before.href} aria-label={before.name}>
        ←
      </Link>
      <h2>{title}</h2>
      <Link href={after.href} aria-label={after.name}>
        →
      </Link>
      {children}
    </div>
  );
}
