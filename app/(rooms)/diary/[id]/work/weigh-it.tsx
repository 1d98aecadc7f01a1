'use client';

import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { handsWords } from '@/lib/installation/rules/work/hands';
import { formatWeight, parseWeight, weightRefusalMessage } from '@/lib/units/rules';
import { keepHere, onDevice, textOf, useWorkDay } from './day-shown';
import { SayWhy } from './say-why';
import css from './work.module.css';

/** The weight from the scale, as it is read; what it means for the hands is said at once. */
export function WeighIt() {
  const today = useWorkDay();
  const { here, day } = today;
  const system = day.system === 'in' ? 'lb' : 'kg';
  const weigh = onDevice((form) => {
    const read = parseWeight(textOf(form, 'weight'), system);
    if (!read.ok) {
      const fields = { weight: weightRefusalMessage(read.refusal) };
      const message = 'Not yet: please look again at what is marked below.';
      return Promise.resolve({ kind: 'refused', message, fields, submitted: {} });
    }
    const weightG = read.value;
    const said = `Kept: ${formatWeight(weightG, system)}. ${handsWords(weightG)}`;
    return keepHere(today, { did: 'weigh', weightG, words: textOf(form, 'words') }, { said });
  });
  return (
    <>
      {here.isWeighed && here.weightG !== null ? (
        <p className={css['said']}>
          By the scale it weighs {formatWeight(here.weightG, system)}. {handsWords(here.weightG)}{' '}
          <span className={css['mark']}>{here.waiting.has('weigh') ? 'not sent yet' : ''}</span>
        </p>
      ) : null}
      <details className={css['more']} open={!here.isWeighed && day.kind === 'hanging'}>
        <summary>{here.isWeighed ? 'Weigh it again' : 'Weigh it'}</summary>
        <FormFrame action={weigh} label="Weigh it">
          <Field
            name="weight"
            label="Weight from the scale"
            hint={`With its board and frame, in ${system}.`}
            kind="measure"
            width="short"
          />
          <Field name="words" label="With what on it" width="half" optional maxLength={160} />
          <SubmitButton variant="quiet">Keep the weight</SubmitButton>
        </FormFrame>
      </details>
      {here.isWeighed || day.kind !== 'hanging' ? null : (
        <SayWhy item="no_scale" label="Why it was not weighed" />
      )}
    </>
  );
}
