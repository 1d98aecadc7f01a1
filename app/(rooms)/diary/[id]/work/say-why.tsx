'use client';

import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { wordsSaid, type SaidKey } from '@/lib/installation/rules/work/ticks';
import { keepHere, onDevice, textOf, useWorkDay } from './day-shown';
import css from './work.module.css';

type SayWhyProps = Readonly<{ item: SaidKey; label: string; hint?: string }>;

/** A word that stands in for something that is not there; it is kept, and can be said anew. */
export function SayWhy({ item, label, hint }: SayWhyProps) {
  const today = useWorkDay();
  const said = wordsSaid(today.here.held, item);
  const say = onDevice((form) => {
    const words = textOf(form, item);
    if (words.length < 3) {
      const fields = { [item]: 'Say it in a few words.' };
      const message = 'Not yet: please look again at what is marked below.';
      return Promise.resolve({ kind: 'refused', message, fields, submitted: {} });
    }
    return keepHere(today, { did: 'tick', item, isDone: true, words }, { said: 'Kept.' });
  });
  return (
    <>
      {said === null ? null : (
        <p className={css['said']}>
          {label}: {said}
        </p>
      )}
      <details className={css['more']}>
        <summary>{said === null ? label : 'Say it anew'}</summary>
        <FormFrame action={say} label={label}>
          <Field name={item} label={label} hint={hint} kind="textarea" rows={2} maxLength={1000} />
          <SubmitButton variant="quiet">Keep it</SubmitButton>
        </FormFrame>
      </details>
    </>
  );
}
