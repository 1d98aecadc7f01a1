import type { ReactNode } from 'react';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { FormAction } from '@/app/ui/form-state';
import { SignatureFields } from '@/app/ui/signature/signature-fields';
import type { OpenPage } from '../open-page';
import { ByThisAddress } from './their-act';

type SignFormProps = Readonly<{
  page: OpenPage;
  action: FormAction;
  label: string;
  /** What the signature stands under. */
  sha256: string;
  send: string;
  children?: ReactNode;
}>;

/** A form that a collector signs: exactly this content, their name, and one clear button. */
export function SignForm({ page, action, label, sha256, send, children }: SignFormProps) {
  return (
    <section>
      <h2>{label}</h2>
      <FormFrame action={action} label={label}>
        <RequestKey />
        <ByThisAddress page={page} />
        <input type="hidden" name="contentSha256" value={sha256} />
        {children}
        <SignatureFields
          name={page.link.forName}
          under="Your name stands under exactly the words above."
        />
        <SubmitButton pendingText="Sending it…">{send}</SubmitButton>
      </FormFrame>
    </section>
  );
}
