'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useEffectEvent, useRef, useTransition, type SubmitEvent } from 'react';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import css from './ready.module.css';

type ScanFieldProps = Readonly<{
  path: string;
  /** What lies ready as the address keeps it, and what goes with it. */
  ready: string;
  kept: Readonly<Record<string, string>>;
  find: string;
  label: string;
  hint: string;
}>;

/**
 * Scans pieces one after another: each lies ready before the next is looked at, so that none is
 * lost however fast they come. Works as a plain form too.
 */
export function ScanField({ path, ready, kept, find, label, hint }: ScanFieldProps) {
  const [pending, start] = useTransition();
  const form = useRef<HTMLFormElement>(null);
  const waiting = useRef<string[]>([]);
  const busy = useRef(false);
  const router = useRouter();

  const go = (text: string) => {
    busy.current = true;
    const query = new URLSearchParams({ ...kept, ready, find: text });
    start(() => router.push(`${path}?${query}`, { scroll: false }));
  };
  // When a page has come, what lies ready there is the truth: only now comes the next scan.
  const sendNext = useEffectEvent(() => {
    busy.current = false;
    const next = waiting.current.shift();
    if (next !== undefined) go(next);
  });
  useEffect(() => {
    if (!pending) sendNext();
  }, [pending]);
  useEffect(() => {
    const input = form.current?.querySelector<HTMLInputElement>('input[name="find"]');
    if (matchMedia('(hover: hover)').matches) input?.focus({ preventScroll: true });
  }, [ready]);

  const submit = (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    const input = form.current?.querySelector<HTMLInputElement>('input[name="find"]');
    const text = input?.value.trim() ?? '';
    if (!input || text === '') return;
    input.value = '';
    if (pending || busy.current) waiting.current.push(text);
    else go(text);
  };

  return (
    <form ref={form} action={path} role="search" className={css['scan']} onSubmit={submit}>
      {Object.entries({ ...kept, ready }).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <Field
        name="find"
        label={label}
        hint={hint}
        kind="search"
        size="counter"
        defaultValue={find}
        maxLength={80}
        autoComplete="off"
        autoFocus
      />
      <Button type="submit" variant="quiet" size="counter">
        Lay ready
      </Button>
    </form>
  );
}
