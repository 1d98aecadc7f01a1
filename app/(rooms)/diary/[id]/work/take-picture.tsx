'use client';

import { PictureField } from '@/app/(rooms)/commissions/picture-field';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { keepHere, onDevice, textOf, useWorkDay } from './day-shown';
import { keptPictureOf } from './kept/smaller';
import css from './work.module.css';

type TakePictureProps = Readonly<{ of: 'fixings' | 'in_place'; label: string; hint: string }>;

/** A picture from the camera, kept on the device until there is a line. */
export function TakePicture({ of, label, hint }: TakePictureProps) {
  const today = useWorkDay();
  const { here } = today;
  const isThere = of === 'fixings' ? here.hasFixingsPicture : here.hasPictureInPlace;
  const take = onDevice(async (form) => {
    const file = form.get('picture');
    if (!(file instanceof File) || file.size === 0) {
      const fields = { picture: 'Take the picture, or choose it.' };
      const message = 'Not yet: please look again at what is marked below.';
      return { kind: 'refused', message, fields, submitted: {} };
    }
    const picture = await keptPictureOf(file);
    const what = { did: 'picture', of, words: textOf(form, 'words') } as const;
    return keepHere(today, what, { said: 'The picture is kept on this device.', picture });
  });
  return (
    <>
      {isThere ? (
        <p className={css['said']}>
          {label} is there.{' '}
          <span className={css['mark']}>{here.waiting.has(of) ? 'not sent yet' : ''}</span>
        </p>
      ) : null}
      <details className={css['more']} open={!isThere}>
        <summary>{isThere ? 'Take another' : label}</summary>
        <FormFrame action={take} label={label}>
          <PictureField name="picture" label={label} hint={hint} />
          <Field name="words" label="What it shows" width="half" optional maxLength={300} />
          <SubmitButton variant="quiet" pendingText="Keeping it…">
            Keep the picture
          </SubmitButton>
        </FormFrame>
      </details>
    </>
  );
}
