'use client';

import { useEffect, useRef, useState } from 'react';
import { differenceWords } from '@/lib/drawer/rules';
import { formatCents } from '@/lib/money/rules';
import css from './drawer.module.css';

/** Adds the notes and coins up while they are counted; without a script, the answer tells it. */
export function CountedSoFar({ expected }: Readonly<{ expected: string }>) {
  const place = useRef<HTMLOutputElement>(null);
  const [counted, setCounted] = useState<string | null>(null);

  useEffect(() => {
    const form = place.current?.form;
    if (!form) return;
    const addUp = (): void => {
      setCounted(sumOf(form));
    };
    addUp();
    form.addEventListener('input', addUp);
    return () => {
      form.removeEventListener('input', addUp);
    };
  }, []);

  return (
    <output ref={place} className={css['so-far']} aria-live="polite">
      {counted === null ? null : (
        <>
          <strong>{formatCents(BigInt(counted))}</strong> counted.{' '}
          {differenceWords(BigInt(counted) - BigInt(expected))}.
        </>
      )}
    </output>
  );
}

function sumOf(form: HTMLFormElement): string | null {
  let sum = 0n;
  let isBegun = false;
  for (const field of form.querySelectorAll<HTMLInputElement>('input[name^="pieces"]')) {
    const typed = field.value.trim();
    if (!/^\d{1,4}$/.test(typed)) continue;
    isBegun = true;
    sum += BigInt(field.name.slice('pieces'.length)) * BigInt(typed);
  }
  return isBegun ? sum.toString() : null;
}
