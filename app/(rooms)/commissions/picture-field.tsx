'use client';

import { useContext, useEffect, useRef, type ChangeEvent } from 'react';
import { Field } from '@/app/ui/form/field';
import { FormAnswer } from '@/app/ui/form/form-answer';

type PictureFieldProps = Readonly<{
  name: string;
  label: string;
  hint?: string | undefined;
  several?: boolean | undefined;
  /** Whether the form may be sent without; several pictures always may. */
  optional?: boolean | undefined;
}>;

/**
 * Asks for a picture, or several: from the camera of a telephone or from what is kept there. What
 * was chosen stays chosen when the form comes back with a fault elsewhere.
 */
export function PictureField({ name, label, hint, several, optional }: PictureFieldProps) {
  const answer = useContext(FormAnswer);
  const place = useRef<HTMLDivElement>(null);
  const chosen = useRef<readonly File[]>([]);

  useEffect(() => {
    const input = place.current?.querySelector<HTMLInputElement>('input[type="file"]');
    if (answer.kind !== 'refused' || !input || chosen.current.length === 0) return;
    // The form was emptied when it came back; its own list of files with it.
    const again = new DataTransfer();
    for (const file of chosen.current) again.items.add(file);
    input.files = again.files;
  }, [answer]);

  const remember = (change: ChangeEvent<HTMLDivElement>) => {
    if (change.target instanceof HTMLInputElement)
      chosen.current = Array.from(change.target.files ?? []);
  };
  return (
    <div ref={place} onChange={remember}>
      <Field
        name={name}
        label={label}
        kind="file"
        accept="image/*,.heic,.heif"
        multiple={several}
        hint={hint ?? 'JPEG, PNG, WebP or HEIC; a phone can take it now.'}
        optional={optional ?? several}
      />
    </div>
  );
}
