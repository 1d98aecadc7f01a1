'use server';

import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { doorAction, refused } from '@/app/form-action';
import { signInInput } from '@/lib/access/input';
import { addressOf, deviceWords } from '@/lib/access/rules/device';
import { insideHref } from '@/lib/access/rules/inside-href';
import { signInRefusalMessage } from '@/lib/access/rules/wait';
import { writeSessionCookie } from '@/lib/access/session';
import { signIn } from '@/lib/access/writes/sign-in';

/** Lets somebody in and shows them what they asked for. */
export const comeIn = doorAction(signInInput, async (at, { name, password, to }) => {
  const sent = await headers();
  const address = addressOf(sent.get('x-forwarded-for') ?? '');
  const device = deviceWords(sent.get('user-agent') ?? '');
  const session = await signIn({ name, password, address, device }, at);
  if (!session.ok) return refused(signInRefusalMessage(session.refusal));
  await writeSessionCookie(session.value, at);
  return redirect(insideHref(to));
});
