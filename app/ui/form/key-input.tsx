'use client';

import { useContext, useState } from 'react';
import { freshKey } from '@/app/ui/form/fresh-key';
import { FormAnswer } from '@/app/ui/form/form-answer';

type KeyInputProps = Readonly<{ value: string; name?: string | undefined }>;

/** The key of a form: the same while it is sent again, a new one after its command was done. */
export function KeyInput({ value, name = 'requestKey' }: KeyInputProps) {
  const state = useContext(FormAnswer);
  const [key, setKey] = useState(value);
  const [seen, setSeen] = useState(state);
  if (state !== seen) {
    setSeen(state);
    if (state.kind === 'done') setKey(freshKey());
  }
  return <input type="hidden" name={name} value={key} readOnly suppressHydrationWarning />;
}
