'use client';

import { startTransition, useActionState, useRef, useState, type SubmitEvent } from 'react';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormAnswer } from '@/app/ui/form/form-answer';
import { Field } from '@/app/ui/form/field';
import { freshKey } from '@/app/ui/form/fresh-key';
import { KeyInput } from '@/app/ui/form/key-input';
import { idle } from '@/app/ui/form-state';
import { Notice } from '@/app/ui/page/notice';
import { scan } from '../actions';
import css from './count.module.css';

/** How many scans that were not counted stay in sight. */
const faultsShown = 4;

/**
 * Scans pieces one after another: each goes on its way at once, in its turn, and the field is free
 * for the next. What was not counted stays in sight until it was seen.
 */
export function ScanForm({ countId }: Readonly<{ countId: string }>) {
  const form = useRef<HTMLFormElement>(null);
  const [firstKey] = useState(freshKey);
  const [state, send] = useActionState(scan, idle);
  const [heard, setHeard] = useState(state);
  const [faults, setFaults] = useState<readonly string[]>([]);
  if (state !== heard) {
    setHeard(state);
    if (state.kind === 'refused') setFaults([...faults, state.message].slice(-faultsShown));
  }

  const submit = (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    const input = form.current?.querySelector<HTMLInputElement>('input[name="code"]');
    if (!form.current || !input || input.value.trim() === '') return;
    const scanned = new FormData(form.current);
    scanned.set('requestKey', freshKey());
    input.value = '';
    input.focus();
    startTransition(() => send(scanned));
  };

  return (
    <FormAnswer.Provider value={idle}>
      <form ref={form} action={send} onSubmit={submit} className={css['scan']} aria-label="Scan">
        <KeyInput value={firstKey} />
        <input type="hidden" name="countId" value={countId} />
        <Field
          name="code"
          label="Scan a piece"
          hint="Its tag or its number; an edition with its number behind it, such as CODE 7."
          kind="search"
          size="counter"
          maxLength={80}
          autoComplete="off"
          autoFocus
        />
        <SubmitButton size="counter" variant="quiet">
          Count it
        </SubmitButton>
      </form>
      <div aria-live="polite" className={css['heard']}>
        {state.kind === 'done' ? <Notice kind="done">{state.message}</Notice> : null}
        {faults.length > 0 ? (
          <Notice kind="refused" title="Not counted">
            <ul>
              {faults.map((fault, place) => (
                <li key={`${place} ${fault}`}>{fault}</li>
              ))}
            </ul>
            <button type="button" className={css['seen']} onClick={() => setFaults([])}>
              I have seen it
            </button>
          </Notice>
        ) : null}
      </div>
    </FormAnswer.Provider>
  );
}
