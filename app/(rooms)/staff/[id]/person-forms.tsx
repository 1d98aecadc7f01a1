import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { Role } from '@/lib/access/rules';
import { giveRoles, letBack, setPassword, stop } from '../actions';
import { RoleChoice } from '../role-choice';

type OfPerson = Readonly<{ staffId: string }>;
type Named = OfPerson & Readonly<{ name: string }>;

/** What someone is here. */
export function RolesForm({ staffId, held }: OfPerson & Readonly<{ held: readonly Role[] }>) {
  return (
    <FormFrame action={giveRoles} label="Part">
      <PersonKeys staffId={staffId} />
      <RoleChoice held={held} />
      <SubmitButton variant="quiet">Give this part</SubmitButton>
    </FormFrame>
  );
}

/** A password that the owner chooses for someone who has lost theirs. */
export function PasswordForm({ staffId }: OfPerson) {
  return (
    <FormFrame action={setPassword} label="New password">
      <PersonKeys staffId={staffId} />
      <Field
        name="password"
        label="New password"
        kind="password"
        hint="At least 12 characters. They are signed out everywhere."
        autoComplete="new-password"
        required
      />
      <SubmitButton variant="quiet">Give the new password</SubmitButton>
    </FormFrame>
  );
}

/** Stops someone's access. */
export function StopForm({ staffId, name }: Named) {
  return (
    <FormFrame action={stop} label="Stop access">
      <PersonKeys staffId={staffId} />
      <p>{name} is signed out everywhere at once. What they did stays under their name.</p>
      <SubmitButton variant="danger">Stop their access</SubmitButton>
    </FormFrame>
  );
}

/** Gives someone their access back. */
export function LetBackForm({ staffId, name }: Named) {
  return (
    <FormFrame action={letBack} label="Let back in">
      <PersonKeys staffId={staffId} />
      <p>{name} signs in again with the password they had.</p>
      <SubmitButton variant="quiet">Let them back in</SubmitButton>
    </FormFrame>
  );
}

function PersonKeys({ staffId }: OfPerson) {
  return (
    <>
      <RequestKey />
      <input type="hidden" name="staffId" value={staffId} />
    </>
  );
}
