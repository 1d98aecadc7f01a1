import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import css from './page.module.css';

export const metadata: Metadata = {
  title: { default: 'Your page', template: '%s' },
  // The address is a secret: nobody is told it, and nobody keeps it.
  robots: { index: false, follow: false, noarchive: true },
};

/** A collector's own page: no rail, no rooms, nothing of the house around it. */
export default function CollectorLayout({ children }: Readonly<{ children: ReactNode }>) {
  return (
    <main id="wall" className={css['wall']} tabIndex={-1}>
      {children}
    </main>
  );
}
