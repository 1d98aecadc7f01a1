'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction, refused, type RefusalWords } from '@/app/form-action';
import {
  addStaffInput,
  changeRolesInput,
  newPasswordInput,
  onePersonInput,
  oneSessionInput,
  ownPasswordInput,
} from '@/lib/access/input';
import { findSignedIn } from '@/lib/access/reads';
import {
  staffRefusalField,
  staffRefusalMessage,
  type StaffRefusal,
} from '@/lib/access/rules/staff';
import {
  addStaff,
  changeRoles,
  endSession,
  giveNewPassword,
  letBackIn,
  stopAccess,
} from '@/lib/access/writes';
import { changeOwnPassword } from '@/lib/access/writes/sessions';

/** Takes someone on. */
export const takeOn = formAction('staff.keep', addStaffInput, async (doer, input) => {
  const added = await addStaff(doer, input);
  revalidatePath('/staff', 'layout');
  return answer(added, words, (id) => ({
    kind: 'done',
    message: `${input.name} can sign in as “${input.signInName}” from now on.`,
    href: `/staff/${id}`,
  }));
});

/** Changes what someone is here. */
export const giveRoles = formAction('staff.keep', changeRolesInput, async (doer, input) => {
  const changed = await changeRoles(doer, input);
  revalidatePath('/staff', 'layout');
  return answer(changed, words, (name) => done(`${name} has the new part from now on.`));
});

/** Gives someone a new password. */
export const setPassword = formAction('staff.keep', newPasswordInput, async (doer, input) => {
  const given = await giveNewPassword(doer, input);
  revalidatePath('/staff', 'layout');
  return answer(given, words, (name) =>
    done(`${name} has a new password and was signed out everywhere. Tell it in person.`),
  );
});

/** Stops someone's access at once. */
export const stop = formAction('staff.keep', onePersonInput, async (doer, input) => {
  const stopped = await stopAccess(doer, input);
  revalidatePath('/staff', 'layout');
  return answer(stopped, words, (name) => done(`${name} can no longer sign in.`));
});

/** Lets someone back in. */
export const letBack = formAction('staff.keep', onePersonInput, async (doer, input) => {
  const back = await letBackIn(doer, input);
  revalidatePath('/staff', 'layout');
  return answer(back, words, (name) => done(`${name} can sign in again.`));
});

/** Signs one browser out. */
export const signBrowserOut = formAction('staff.keep', oneSessionInput, async (doer, input) => {
  const ended = await endSession(doer, input);
  revalidatePath('/staff', 'layout');
  return answer(ended, words, (name) => done(`${name} is signed out there.`));
});

/** Changes one's own password. */
export const choosePassword = formAction('self.keep', ownPasswordInput, async (doer, input) => {
  const here = await findSignedIn();
  if (!here) return refused('You were signed out in the meantime. Sign in again first.');
  const changed = await changeOwnPassword(doer, here.sessionId, input);
  revalidatePath('/staff', 'layout');
  return answer(changed, words, () =>
    done('Your new password holds from now on. Your other browsers were signed out.'),
  );
});

function words(refusal: StaffRefusal): RefusalWords {
  const message = staffRefusalMessage(refusal);
  const field = staffRefusalField(refusal);
  return field ? { message, fields: { [field]: message } } : message;
}

function done(message: string) {
  return { kind: 'done', message } as const;
}
