import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { takeOn } from '../actions';
import { RoleChoice } from '../role-choice';

export const metadata: Metadata = { title: 'Take someone on' };

/** Someone new: their name, their part, and the password they begin with. */
export default async function TakingOn() {
  await requireActor('staff.keep');
  return (
    <>
      <PageHead
        title="Take someone on"
        back={{ href: '/staff', name: 'Staff' }}
        lead="They can sign in as soon as you have told them the name and the password."
      />
      <FormFrame action={takeOn} label="Take someone on">
        <RequestKey />
        <Field name="name" label="Name" required autoComplete="off" width="half" />
        <Field
          name="signInName"
          label="Name to sign in with"
          hint="Short, in small letters, such as wren."
          required
          autoComplete="off"
          width="half"
        />
        <RoleChoice held={[]} />
        <Field
          name="password"
          label="First password"
          kind="password"
          hint="At least 12 characters. They can choose their own afterwards."
          required
          autoComplete="new-password"
          width="half"
        />
        <SubmitButton>Take them on</SubmitButton>
      </FormFrame>
    </>
  );
}
