'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { endRouteInput, keepRouteInput } from '@/lib/studio/input/routes';
import { routeRefusalMessage } from '@/lib/studio/rules/route-refusals';
import { endRoute, keepRoute } from '@/lib/studio/writes/routes/keep';

/** Keeps a route, new or changed. */
export const keep = formAction('studio.keep', keepRouteInput, async (doer, input) => {
  const kept = await keepRoute(doer, input);
  if (!kept.ok) return refused(routeRefusalMessage(kept.refusal));
  revalidatePath('/studio', 'layout');
  redirect('/studio/routes');
});

/** Puts a route away. */
export const putAway = formAction('studio.keep', endRouteInput, async (doer, input) => {
  const ended = await endRoute(doer, input);
  if (!ended.ok) return refused(routeRefusalMessage(ended.refusal));
  revalidatePath('/studio', 'layout');
  redirect('/studio/routes');
});
