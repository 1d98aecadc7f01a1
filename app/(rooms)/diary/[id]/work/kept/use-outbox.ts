'use client';

import { useEffect, useState, useSyncExternalStore } from 'react';
import { nothingKept, Outbox, type OutboxView } from './outbox';

const everyMs = 15_000;
const atTheStart = (): OutboxView => nothingKept;

/** What this device keeps of a work order; sent when the page opens, when a line is back, and again. */
export function useOutbox(appointmentId: string): { outbox: Outbox; view: OutboxView } {
  const [outbox] = useState(() => new Outbox(appointmentId));
  const view = useSyncExternalStore(outbox.subscribe, outbox.view, atTheStart);
  useEffect(() => {
    void outbox.begin();
    const send = () => void outbox.send();
    const seen = () => {
      if (document.visibilityState === 'visible') send();
    };
    window.addEventListener('online', send);
    document.addEventListener('visibilitychange', seen);
    const timer = window.setInterval(send, everyMs);
    return () => {
      window.removeEventListener('online', send);
      document.removeEventListener('visibilitychange', seen);
      window.clearInterval(timer);
    };
  }, [outbox]);
  return { outbox, view };
}
