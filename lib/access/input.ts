import { z } from 'zod';
import { roles } from './rules';
import { passwordLengthMost } from './rules/password';

const requestKey = z.uuid();
const staffId = z.uuid();
/** Room for a password and then some, so that a long one is told so and a book is not read. */
const typedPassword = z
  .string()
  .min(1)
  .max(passwordLengthMost * 2);

/** A person's name as people say it. */
export const personNameInput = z.string().trim().min(1).max(80);

/**
 * What somebody types at the door: small letters, figures, dots and hyphens.
 *
 * @example signInNameInput.parse(' Wren ') // 'wren'
 */
export const signInNameInput = z
  .string()
  .trim()
  .toLowerCase()
  .regex(
    /^[a-z0-9][a-z0-9._-]{1,39}$/,
    'Two to forty letters or figures without spaces, such as wren or wren.alder.',
  );

/** One or more roles; a form with a single tick sends it alone. */
export const rolesInput = z
  .union([z.enum(roles), z.array(z.enum(roles))], { error: 'Choose at least one part.' })
  .transform((ticked) => roles.filter((role) => ticked.includes(role)))
  .refine((held) => held.length > 0, 'Choose at least one part.');

/** What is sent at the door; `to` is the page that was asked for. */
export const signInInput = z.strictObject({
  name: z.string().trim().toLowerCase().min(1, 'Write your name.').max(120),
  password: z
    .string()
    .min(1, 'Write your password.')
    .max(passwordLengthMost * 4),
  to: z.string().max(500).default('/'),
});

/** Someone new. */
export const addStaffInput = z.strictObject({
  requestKey,
  name: personNameInput,
  signInName: signInNameInput,
  roles: rolesInput,
  password: typedPassword,
});
export type AddStaffInput = z.infer<typeof addStaffInput>;

/** What someone is here from now on. */
export const changeRolesInput = z.strictObject({ requestKey, staffId, roles: rolesInput });
export type ChangeRolesInput = z.infer<typeof changeRolesInput>;

/** A new password for someone. */
export const newPasswordInput = z.strictObject({ requestKey, staffId, password: typedPassword });
export type NewPasswordInput = z.infer<typeof newPasswordInput>;

/** One person: to stop their access, or to give it back. */
export const onePersonInput = z.strictObject({ requestKey, staffId });
export type OnePersonInput = z.infer<typeof onePersonInput>;

/** One signed-in browser. */
export const oneSessionInput = z.strictObject({ requestKey, sessionId: z.uuid() });
export type OneSessionInput = z.infer<typeof oneSessionInput>;

/** One's own new password. */
export const ownPasswordInput = z.strictObject({
  requestKey,
  currentPassword: typedPassword,
  password: typedPassword,
});
export type OwnPasswordInput = z.infer<typeof ownPasswordInput>;

/** A form that says nothing but "do it". */
export const bareInput = z.strictObject({});
