'use client';

import type { ReactNode } from 'react';
import { useFormStatus } from 'react-dom';
import { buttonClass, type ButtonVariant } from '@/app/ui/button/button';

type SubmitButtonProps = Readonly<{
  children: ReactNode;
  variant?: ButtonVariant | undefined;
  size?: 'plain' | 'counter' | undefined;
  wide?: boolean | undefined;
  /** Said while the answer is on its way. */
  pendingText?: string | undefined;
  /** For a form with more than one button: what this one sends. */
  name?: string | undefined;
  value?: string | undefined;
  disabled?: boolean | undefined;
}>;

/** Sends the form around it once; a second press while it is on its way does nothing. */
export function SubmitButton(props: SubmitButtonProps) {
  const { pending, data } = useFormStatus();
  const mine = pending && (!props.name || data.get(props.name) === props.value);
  return (
    <button
      type="submit"
      name={props.name}
      value={props.value}
      disabled={props.disabled}
      aria-disabled={pending || undefined}
      onClick={(press) => {
        if (pending) press.preventDefault();
      }}
      className={buttonClass(props)}
    >
      {mine ? (props.pendingText ?? 'One moment…') : props.children}
    </button>
  );
}
