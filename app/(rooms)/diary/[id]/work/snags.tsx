'use client';

import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { Section } from '@/app/ui/page/section';
import { keepHere, onDevice, textOf, useWorkDay } from './day-shown';
import { snagSentences } from './snag-sentences';
import css from './work.module.css';

/** What is still to be put right, who does it and by when; it is read out before the signature. */
export function Snags() {
  const today = useWorkDay();
  const { day, view } = today;
  const write = onDevice((form) => {
    const mendByOn = textOf(form, 'mendByOn');
    const [words, mendById] = [textOf(form, 'words'), textOf(form, 'mendById')];
    return keepHere(today, { did: 'snag', words, mendById, mendByOn }, { said: 'Kept.' });
  });
  const sentences = snagSentences(day, view.kept);
  return (
    <Section title="To be put right" id="snags">
      {sentences.length === 0 ? (
        <p className={css['quiet']}>Nothing yet. What is not right is written down, with a day.</p>
      ) : (
        <ul className={css['lines']}>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <details className={css['more']}>
        <summary>Write one down</summary>
        <FormFrame action={write} label="Something to be put right">
          <Field name="words" label="What is not right" kind="textarea" rows={2} maxLength={600} />
          <Field
            name="mendById"
            label="Who puts it right"
            kind="select"
            width="half"
            options={day.staff.map(({ id, name }) => ({ value: id, label: name }))}
            defaultValue={day.me.id}
          />
          <Field name="mendByOn" label="By when" kind="day" width="short" />
          <SubmitButton variant="quiet">Keep it</SubmitButton>
        </FormFrame>
      </details>
    </Section>
  );
}
