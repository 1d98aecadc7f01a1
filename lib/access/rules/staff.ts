import { ok, refuse, type Result } from '@/lib/platform/result';
import { notAllowedMessage, type NotAllowed, type Role } from '../rules';
import { passwordRefusalMessage, type PasswordRefusal } from './password';

/** Why something about the people who work here was not done. */
export type StaffRefusal =
  | NotAllowed
  | PasswordRefusal
  | { code: 'unknown_person' }
  | { code: 'sign_in_name_taken'; signInName: string }
  | { code: 'last_owner'; name: string }
  | { code: 'own_password_wrong' }
  | { code: 'session_unknown' }
  | { code: 'key_used_for_something_else' };

/** Someone who works here, as far as this decision needs to know. */
export type StaffMember = Readonly<{
  id: string;
  name: string;
  roles: readonly Role[];
  active: boolean;
}>;

/**
 * Whether the gallery still has an owner who can sign in once somebody's part has changed.
 *
 * @param staff  everyone who works here, before the change
 * @param change the person as they are to be
 * @returns the person as they are to be; refuses `unknown_person`, then `last_owner`
 * @example the one owner becomes a maker // refused: last_owner
 */
export function decideChange(
  staff: readonly StaffMember[],
  change: Pick<StaffMember, 'id'> & Partial<Pick<StaffMember, 'roles' | 'active'>>,
): Result<StaffMember, StaffRefusal> {
  const before = staff.find((member) => member.id === change.id);
  if (!before) return refuse({ code: 'unknown_person' });
  const after = { ...before, ...change };
  const isOwnerStill = (member: StaffMember) => member.active && member.roles.includes('owner');
  const owners = staff.map((member) => (member.id === after.id ? after : member));
  if (!owners.some(isOwnerStill)) return refuse({ code: 'last_owner', name: before.name });
  return ok(after);
}

/** Says in a full sentence why something about the people here was not done. */
export function staffRefusalMessage(refusal: StaffRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'unknown_person':
      return 'Nobody of that name works here any more. Look at the list again.';
    case 'sign_in_name_taken':
      return `Somebody here signs in as “${refusal.signInName}” already. Choose another name.`;
    case 'last_owner':
      return `${refusal.name} is the last owner who can sign in. Make someone else an owner first.`;
    case 'own_password_wrong':
      return 'That is not the password you have now.';
    case 'session_unknown':
      return 'That browser was signed out already.';
    case 'key_used_for_something_else':
      return 'This form was sent before with something else in it. Load the page again, please.';
    case 'password_too_short':
    case 'password_too_long':
    case 'password_too_common':
    case 'password_is_the_name':
      return passwordRefusalMessage(refusal);
  }
}

/** The field that a refusal belongs to, so that it can be told beside it; null for none. */
export function staffRefusalField(refusal: StaffRefusal): string | null {
  if (refusal.code === 'sign_in_name_taken') return 'signInName';
  if (refusal.code === 'own_password_wrong') return 'currentPassword';
  return refusal.code.startsWith('password_') ? 'password' : null;
}
