import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { log } from './actions';
import { PictureField } from './picture-field';
import type { AskingProps } from './asking/known';
import { RequestQuestions } from './request-questions';
import css from './commissions.module.css';

type LogFormProps = Readonly<{
  collector: Readonly<{ id: string; name: string }> | null;
  newName: string;
  asking: AskingProps;
}>;

/** The form that logs a request, with whom it is for and the pictures they brought. */
export function LogForm({ collector, newName, asking }: LogFormProps) {
  return (
    <FormFrame action={log} label="Open a commission">
      <RequestKey />
      {collector ? (
        <p className={css['for-whom']}>
          <input type="hidden" name="collectorId" value={collector.id} />
          For <strong>{collector.name}</strong> <Link href="/commissions/new">Somebody else</Link>
        </p>
      ) : (
        <fieldset className={css['questions']}>
          <legend>Somebody new</legend>
          <Field
            name="newName"
            label="Their name"
            defaultValue={newName}
            width="half"
            autoComplete="off"
          />
          <div className={css['pair']}>
            <Field name="newPhone" label="Telephone" kind="telephone" optional />
            <Field name="newEmail" label="Mail" kind="email" optional />
          </div>
        </fieldset>
      )}
      <RequestQuestions
        {...asking}
        afterFirst={
          <PictureField
            name="pictures"
            label="Pictures"
            hint="The wall, a colour, something they loved. A phone can take them now. Up to eight."
            several
          />
        }
      />
      <SubmitButton pendingText="Writing it down…">Write the request down</SubmitButton>
    </FormFrame>
  );
}
