'use client';

import { useEffect, useState, type ReactNode } from 'react';
import { Notice } from '@/app/ui/page/notice';
import { forgetPages } from './keep-page';
import { countNotSent } from './store';

type Kept = readonly (readonly [string, number])[];

/** Says for which work orders this device keeps something that was not sent yet. */
export function KeptSomewhere() {
  const [kept, setKept] = useState<Kept>([]);
  useEffect(() => {
    let isHere = true;
    countNotSent()
      .then((counts) => {
        if (isHere) setKept([...counts]);
      })
      .catch(() => undefined);
    return () => {
      isHere = false;
    };
  }, []);
  return kept.map(([id, count]) => (
    <Notice key={id} kind="caution" title="Kept on this device, and not sent yet">
      {count === 1 ? 'One thing' : `${count} things`} of{' '}
      <a href={`/diary/${id}/work`}>a work order</a> {count === 1 ? 'waits' : 'wait'} here. Open it
      with a line, and it is sent.
    </Notice>
  ));
}

/**
 * Forms that leave: as one of them is sent, the pages that were kept on this device are forgotten.
 * What was not sent stays until whoever wrote it signs in again.
 */
export function ForgetOnLeaving({ children }: Readonly<{ children: ReactNode }>) {
  const forget = () => void forgetPages().catch(() => undefined);
  return (
    <div style={{ display: 'contents' }} onSubmit={forget}>
      {children}
    </div>
  );
}
