'use client';

import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { Section } from '@/app/ui/page/section';
import { formatInstant } from '@/lib/dates/rules';
import { keepHere, onDevice, textOf, useWorkDay } from './day-shown';
import css from './work.module.css';

/** What was noted on the day, by whom and when, and a field for one more. */
export function Notes() {
  const today = useWorkDay();
  const { here, day } = today;
  const note = onDevice((form) => {
    const words = textOf(form, 'note');
    if (words === '') {
      const message = 'Not yet: please look again at what is marked below.';
      const fields = { note: 'Write the note.' };
      return Promise.resolve({ kind: 'refused', message, fields, submitted: {} });
    }
    return keepHere(today, { did: 'tick', item: 'note', isDone: true, words }, { said: 'Kept.' });
  });
  return (
    <Section title="Notes of the day" id="notes">
      <ul className={css['lines']}>
        {here.notes.map((each) => (
          <li key={each.id}>
            {each.words}{' '}
            <span className={css['mark']}>
              {day.ticks.find(({ id }) => id === each.id)?.by ?? day.me.name},{' '}
              {formatInstant(each.tickedAt, day.zone)}
              {here.waiting.has(each.id) ? ', not sent yet' : ''}
            </span>
          </li>
        ))}
      </ul>
      <FormFrame action={note} label="Write a note">
        <Field
          name="note"
          label="A note"
          hint="No codes of doors, and nothing about the house that is not for everybody here."
          kind="textarea"
          rows={2}
          maxLength={1000}
        />
        <SubmitButton variant="quiet">Keep the note</SubmitButton>
      </FormFrame>
    </Section>
  );
}
