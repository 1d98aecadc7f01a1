'use server';

import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { bareInput } from '@/lib/access/input';
import { findSignedIn } from '@/lib/access/reads';
import { notAllowedMessage } from '@/lib/access/rules';
import { clearSessionCookie } from '@/lib/access/session';
import { signOut, signOutEverywhere } from '@/lib/access/writes/sessions';

/** Signs this browser out. */
export const leave = formAction('self.keep', bareInput, async (doer) => {
  const here = await findSignedIn();
  if (here) await signOut(here.sessionId, doer.at);
  await clearSessionCookie();
  return redirect('/sign-in');
});

/** Signs every browser of this person out. */
export const leaveEverywhere = formAction('self.keep', bareInput, async (doer) => {
  const left = await signOutEverywhere(doer);
  if (!left.ok) return refused(notAllowedMessage(left.refusal));
  await clearSessionCookie();
  return redirect('/sign-in');
});
