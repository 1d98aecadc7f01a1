'use client';

import { useState } from 'react';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import { formatCents, parseCents } from '@/lib/money/rules';
import css from './counter.module.css';

const ways = [
  { value: '', label: 'not used' },
  { value: 'cash', label: 'cash' },
  { value: 'card', label: 'card' },
  { value: 'credit', label: 'voucher or store credit' },
  { value: 'cheque', label: 'cheque' },
  { value: 'bank_transfer', label: 'bank transfer' },
];
const rowsFirst = 3;
const rowsMost = 12;

/** The parts of a payment, as many as wanted; says what is left while they are written. */
export function PayRows({ due }: Readonly<{ due: string }>) {
  const [count, setCount] = useState(rowsFirst);
  const [paid, setPaid] = useState(0n);
  const rows = Array.from({ length: count }, (_none, at) => at + 1);
  return (
    <div
      className={css['pay-rows']}
      onInput={(event) => setPaid(paidIn(event.currentTarget, rows))}
    >
      <p className={css['quiet']}>
        An amount that is left empty takes what is left; a voucher no more than is on it.
      </p>
      {rows.map((row) => (
        <fieldset key={row} className={css['pay-row']}>
          <legend className="heard-only">Part {row}</legend>
          <Field name={`way${row}`} label="By" kind="select" size="counter" options={ways} />
          <Field name={`amount${row}`} label="How much" kind="money" size="counter" />
          <Field
            name={`note${row}`}
            label="Slip or voucher number"
            size="counter"
            autoComplete="off"
            maxLength={40}
          />
        </fieldset>
      ))}
      <p className={css['change']} aria-live="polite">
        {leftWords(BigInt(due) - paid)}
      </p>
      {count < rowsMost ? (
        <Button variant="quiet" size="counter" onClick={() => setCount(count + 1)}>
          One more part
        </Button>
      ) : null}
    </div>
  );
}

function paidIn(box: HTMLElement, rows: readonly number[]): bigint {
  return rows.reduce((sum, row) => {
    const field = box.querySelector<HTMLInputElement>(`input[name="amount${row}"]`);
    const read = parseCents(field?.value ?? '');
    return read.ok ? sum + read.value : sum;
  }, 0n);
}

function leftWords(left: bigint): string {
  if (left > 0n) return `${formatCents(left)} left to pay`;
  return left < 0n ? `${formatCents(-left)} more than is due` : 'All of it';
}
