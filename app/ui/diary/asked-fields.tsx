'use client';

import { useContext } from 'react';
import { Field } from '@/app/ui/form/field';
import { FormAnswer } from '@/app/ui/form/form-answer';
import { bookingQuestions, questionLabels } from '@/lib/installation/rules/diary/question-names';
import css from './diary.module.css';

/**
 * What is asked once a day was sent that is not as it should be: a field for each question, with
 * the sentence that explains it. Nothing before that.
 */
export function AskedFields() {
  const state = useContext(FormAnswer);
  if (state.kind !== 'refused') return null;
  const asked = bookingQuestions.filter((about) => {
    const name = `word.${about}`;
    return name in state.fields || (state.submitted[name] ?? '') !== '';
  });
  if (asked.length === 0) return null;
  return (
    <fieldset className={css['asked']}>
      <legend>Not as it should be</legend>
      {asked.map((about) => (
        <Field
          key={about}
          name={`word.${about}`}
          label={questionLabels[about]}
          kind="textarea"
          rows={2}
          maxLength={300}
        />
      ))}
    </fieldset>
  );
}
