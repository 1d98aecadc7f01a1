'use client';

import { useState, useSyncExternalStore } from 'react';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { useFieldAnswer } from '@/app/ui/form/form-answer';
import { SignaturePad } from './signature-pad';
import css from './signature.module.css';

type SignatureFieldsProps = Readonly<{
  /** Who is likely to sign; may be changed. */
  name?: string | undefined;
  /** In what capacity, such as "for the Fernhollow library"; may be left empty. */
  capacity?: string | undefined;
  /** Offers "on paper" too, for the gallery's own pages. */
  onPaper?: boolean | undefined;
  /** What the signature stands under, in one sentence. */
  under?: string | undefined;
}>;

/**
 * The signature under something: the name typed, drawn with a finger, a pen or the mouse, or given
 * on paper. Without JavaScript, and for the keyboard alone, the typed name signs.
 */
export function SignatureFields({ name, capacity, onPaper, under }: SignatureFieldsProps) {
  const canDraw = useSyncExternalStore(neverChanges, here, notYet);
  const typed = useFieldAnswer('signedAs').typed ?? 'typed';
  const [how, setHow] = useState(typed);
  const ways = [
    { value: 'typed', label: 'My typed name is my signature' },
    ...(canDraw ? [{ value: 'drawn', label: 'Draw it with finger, pen or mouse' }] : []),
    ...(onPaper ? [{ value: 'on_paper', label: 'Signed on paper, which the gallery keeps' }] : []),
  ];
  return (
    <div
      className={css['signature']}
      onChange={(change) => {
        const { target } = change;
        if (target instanceof HTMLInputElement && target.name === 'signedAs') setHow(target.value);
      }}
    >
      <Field
        name="signedName"
        label="Name"
        hint={under ?? 'As you sign.'}
        defaultValue={name}
        autoComplete="name"
        maxLength={120}
        width="half"
        required
      />
      <Field
        name="signedCapacity"
        label="Signing for"
        hint="Only if you sign for a house, a firm or somebody else."
        optional
        defaultValue={capacity}
        autoComplete="organization"
        maxLength={120}
        width="half"
      />
      <Choice
        name="signedAs"
        legend="How it is signed"
        options={ways}
        defaultValue={how}
        layout="down"
      />
      {how === 'drawn' ? <SignaturePad /> : null}
    </div>
  );
}

/** Whether a hand can draw here is known once the page has come to life. */
const neverChanges = () => () => undefined;
const here = () => true;
const notYet = () => false;
