'use client';

import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import type { FormAction } from '@/app/ui/form-state';
import { RequestKey } from '@/app/ui/form/request-key';
import { keepDoorCodes } from './actions';
import css from './work.module.css';

/** The codes of doors, gates and alarms: for this day alone, and struck out when it is signed. */
export function DoorCodes({ id, codes }: Readonly<{ id: string; codes: string }>) {
  return (
    <>
      {codes === '' ? null : (
        <p className={css['codes']}>
          <strong>Codes:</strong> {codes}
        </p>
      )}
      <details className={css['more']}>
        <summary>{codes === '' ? 'Codes of doors and alarms' : 'Change the codes'}</summary>
        <FormFrame action={whereThereIsALine} label="Codes of doors and alarms">
          <RequestKey />
          <input type="hidden" name="appointmentId" value={id} />
          <Field
            name="codes"
            label="Codes of doors, gates and alarms"
            hint="For this day alone. They are struck out when it is signed; nothing of them stays in the history."
            autoComplete="off"
            maxLength={300}
            width="half"
            defaultValue={codes}
          />
          <SubmitButton variant="quiet">Keep the codes</SubmitButton>
        </FormFrame>
      </details>
    </>
  );
}

/** Codes are kept by the gallery alone: without a line that is said, and the page stays. */
const whereThereIsALine: FormAction = async (before, form) => {
  try {
    return await keepDoorCodes(before, form);
  } catch {
    const message = 'There is no line to the gallery just now. Codes are kept there alone.';
    return { kind: 'refused', message, fields: {}, submitted: {} };
  }
};
