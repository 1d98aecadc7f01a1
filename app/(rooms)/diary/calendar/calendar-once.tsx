'use client';

import { useContext, useRef, useState } from 'react';
import { Button } from '@/app/ui/button/button';
import { FormAnswer } from '@/app/ui/form/form-answer';
import css from './calendar.module.css';

/** The address that was just made: to copy, or to open in the calendar of this very device. */
export function CalendarOnce() {
  const state = useContext(FormAnswer);
  const field = useRef<HTMLTextAreaElement>(null);
  const [copied, setCopied] = useState<string | null>(null);
  const address = state.kind === 'done' ? state.href : undefined;
  if (!address) return null;
  const copy = async () => {
    field.current?.select();
    try {
      await navigator.clipboard.writeText(address);
      setCopied('Copied.');
    } catch {
      setCopied('It is marked: copy it with the keys of this machine.');
    }
  };
  return (
    <div className={css['once']}>
      <label htmlFor="calendar-once">The address, to subscribe to in a calendar</label>
      <textarea id="calendar-once" ref={field} readOnly rows={3} value={address} />
      <div className={css['acts']}>
        <Button variant="quiet" onClick={() => void copy()}>
          Copy it
        </Button>
        <a href={address.replace(/^https?:/, 'webcal:')}>Open it in this device’s calendar</a>
        <span role="status">{copied}</span>
      </div>
    </div>
  );
}
