'use server';

import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { doorAction, refused, type RefusalWords } from '@/app/form-action';
import { firstRunInput } from '@/lib/access/input/set-up';
import { deviceWords } from '@/lib/access/rules/device';
import {
  firstRunRefusalField,
  firstRunRefusalMessage,
  type FirstRunRefusal,
} from '@/lib/access/rules/set-up';
import { writeSessionCookie } from '@/lib/access/session';
import { finishFirstRun } from '@/lib/access/writes/set-up';

/** Sets the gallery up, once, and lets its owner in. */
export const openGallery = doorAction(firstRunInput, async (at, input) => {
  const device = deviceWords((await headers()).get('user-agent') ?? '');
  const session = await finishFirstRun(input, { at, device });
  if (!session.ok) return refused(words(session.refusal));
  await writeSessionCookie(session.value, at);
  return redirect('/');
});

function words(refusal: FirstRunRefusal): RefusalWords {
  const message = firstRunRefusalMessage(refusal);
  const field = firstRunRefusalField(refusal);
  return field ? { message, fields: { [field]: message } } : message;
}
