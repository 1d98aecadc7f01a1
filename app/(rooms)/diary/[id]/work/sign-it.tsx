'use client';

import { useState, type SyntheticEvent } from 'react';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import { SignatureFields } from '@/app/ui/signature/signature-fields';
import { missingBeforeSigning, missingWords } from '@/lib/installation/rules/work/before-signing';
import { isTicked } from '@/lib/installation/rules/work/ticks';
import { keepHere, onDevice, textOf, useWorkDay } from './day-shown';
import { saidAbove } from './said-above';
import { snagSentences } from './snag-sentences';
import css from './work.module.css';

/** The signature of whoever takes the piece, under what they can read; kept here until it is sent. */
export function SignIt() {
  const { day, here, view } = useWorkDay();
  const signing = view.kept.find(
    ({ entry, standing }) => entry.did === 'sign' && standing !== 'refused',
  );
  const missing = missingBeforeSigning({ ...day, ...here });
  return (
    <Section title="It is handed over" id="sign">
      {signing ? (
        <Notice kind="done" title="It was signed">
          The signature is kept on this device
          {signing.standing === 'sent' ? ', and the gallery has it.' : ' until it is sent.'}
        </Notice>
      ) : null}
      {missing.length > 0 ? (
        <Notice kind="caution" title="Before it is signed">
          <ul>
            {missing.map((each) => (
              <li key={each}>{missingWords[each]}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      {day.maySign ? null : (
        <p>Only those who go along to this appointment, or the owner, have it signed.</p>
      )}
      {day.maySign && missing.length === 0 && !signing ? <ToSign /> : null}
    </Section>
  );
}

function ToSign() {
  const today = useWorkDay();
  const { day, here, view } = today;
  const snags = snagSentences(day, view.kept);
  const [careTold] = useState(() => isTicked(here.held, 'care_told'));
  const [typed, setTyped] = useState<FormData | null>(null);
  const read = (form: FormData) => saidAbove(form, day, { snags, careTold });
  const shown = read(typed ?? new FormData());
  const follow = ({ currentTarget }: SyntheticEvent<HTMLDivElement>) => {
    const form = currentTarget.closest('form');
    if (form) setTyped(new FormData(form));
  };
  const open = day.items.filter(({ key }) => !isTicked(here.held, key));
  const sign = onDevice(async (form) => {
    const said = read(form);
    const signature = {
      signedName: said.signedName,
      signedCapacity: textOf(form, 'signedCapacity'),
      signedAs: textOf(form, 'signedAs') === 'drawn' ? ('drawn' as const) : ('typed' as const),
      drawing: textOf(form, 'signedAs') === 'drawn' ? textOf(form, 'drawing') : '',
    };
    if (signature.signedAs === 'drawn' && signature.drawing === '') {
      const message = 'Not yet: please look again at what is marked below.';
      const fields = { drawing: 'Nothing is drawn yet.' };
      return { kind: 'refused', message, fields, submitted: {} };
    }
    const { parts, fixings, careGiven, remarks, readOn, words } = said;
    const what = { did: 'sign', parts, fixings, careGiven, remarks, readOn, read: words } as const;
    return keepHere(today, { ...what, ...signature }, { said: 'Signed, and kept.' });
  });
  return (
    <FormFrame action={sign} label="Sign the hand-over">
      <div className={css['sign']} onInput={follow}>
        <Field
          name="parts"
          label="Parts, counted"
          kind="count"
          width="short"
          defaultValue={String(day.handOverFacts?.parts ?? '')}
          optional
        />
        <Field
          name="fixings"
          label="How it is fixed"
          kind="textarea"
          rows={2}
          defaultValue={day.handOverFacts?.fixings}
          optional
        />
        <Choice
          name="careGiven"
          kind="tick"
          legend="How to look after it"
          options={[{ value: 'yes', label: 'It was told, and the paper about it given' }]}
          defaultValue={careTold ? 'yes' : ''}
        />
        <Field name="remarks" label="What they had to remark" kind="textarea" rows={2} optional />
        {open.length > 0 ? (
          <p className={css['quiet']}>Not ticked: {open.map(({ words }) => words).join('; ')}.</p>
        ) : null}
        <blockquote className={css['above']} aria-live="polite" aria-label="What is signed">
          {shown.words}
        </blockquote>
        <SignatureFields
          name={day.handOverFacts?.collector}
          under="Whoever takes the piece reads what stands above, and signs as they always do."
        />
      </div>
      <SubmitButton size="counter">Hand it over</SubmitButton>
    </FormFrame>
  );
}
