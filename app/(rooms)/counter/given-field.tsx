'use client';

import { useState } from 'react';
import { Field } from '@/app/ui/form/field';
import { formatCents, parseCents } from '@/lib/money/rules';
import css from './counter.module.css';

/** Cash as it was laid on the counter; says at once what goes back. */
export function GivenField({ total }: Readonly<{ total: string }>) {
  const [typed, setTyped] = useState('');
  return (
    <div onInput={(event) => setTyped(textOf(event.target))} className={css['given']}>
      <div className={css['by-cash']}>
        <Field name="given" label="Given" kind="money" size="counter" autoComplete="off" />
      </div>
      <p className={css['change']} aria-live="polite">
        {backWords(typed, BigInt(total))}
      </p>
    </div>
  );
}

function textOf(target: EventTarget): string {
  return target instanceof HTMLInputElement ? target.value : '';
}

function backWords(typed: string, totalCents: bigint): string {
  const given = parseCents(typed);
  if (!given.ok) return '';
  const back = given.value - totalCents;
  return back < 0n ? `${formatCents(-back)} is missing` : `${formatCents(back)} goes back`;
}
