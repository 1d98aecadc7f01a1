'use client';

import { usePathname } from 'next/navigation';
import type { ReactNode } from 'react';
import css from './rail.module.css';

/** The rooms that do not fit beside the thumb; closes by itself when a room is entered. */
export function MoreRooms({ children }: Readonly<{ children: ReactNode }>) {
  const path = usePathname();
  return (
    <details className={css['more']} key={path} name="more-rooms">
      <summary className={css['room']}>More</summary>
      <div className={css['more-sheet']}>{children}</div>
    </details>
  );
}
