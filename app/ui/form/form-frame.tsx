'use client';

import { useActionState, useEffect, useRef, type ReactNode } from 'react';
import { classes } from '@/app/ui/classes';
import { FormAnswer } from '@/app/ui/form/form-answer';
import { idle, type FormAction } from '@/app/ui/form-state';
import { Notice } from '@/app/ui/page/notice';
import css from './form.module.css';

type FormFrameProps = Readonly<{
  action: FormAction;
  children: ReactNode;
  /** Names the form for those who listen to the page. */
  label?: string | undefined;
  /** Lays the fields side by side where there is room. */
  layout?: 'down' | 'row' | undefined;
  className?: string | undefined;
}>;

/**
 * A form and its answer. Works without JavaScript; with it, keeps the page, keeps what was typed
 * and puts the cursor into the first field that needs another look.
 */
export function FormFrame({ action, children, label, layout = 'down', className }: FormFrameProps) {
  const [state, send] = useActionState(action, idle);
  const form = useRef<HTMLFormElement>(null);

  useEffect(() => {
    if (state.kind !== 'refused') return;
    const bad = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    (bad ?? form.current?.querySelector<HTMLElement>('[data-answer]'))?.focus();
  }, [state]);

  return (
    <FormAnswer.Provider value={state}>
      <form
        ref={form}
        action={send}
        aria-label={label}
        noValidate
        className={classes(css['frame'], layout === 'row' && css['row'], className)}
      >
        <div className={css['answer']} data-answer tabIndex={-1} aria-live="polite">
          {state.kind === 'refused' ? <Notice kind="refused">{state.message}</Notice> : null}
          {state.kind === 'done' ? (
            <Notice kind="done">
              {state.message} {state.href ? <a href={state.href}>See it</a> : null}
            </Notice>
          ) : null}
        </div>
        {children}
      </form>
    </FormAnswer.Provider>
  );
}
