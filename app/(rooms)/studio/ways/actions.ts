'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { fieldWords } from '@/app/form-words';
import { answer, formAction, refused } from '@/app/form-action';
import { getGallery } from '@/lib/platform/settings';
import {
  closeDaysInput,
  endBenchInput,
  keepBenchInput,
  openDaysInput,
  waysInputIn,
} from '@/lib/studio/input/ways';
import { routeRefusalMessage } from '@/lib/studio/rules/route-refusals';
import { closeDays, endBench, keepBench, keepWays, openDays } from '@/lib/studio/writes/ways/keep';

/** Keeps how the studio works; what a length without a unit means is the gallery's own. */
export const keepStudioWays = formAction(
  'studio.keep',
  z.record(z.string(), z.union([z.string(), z.array(z.string())])),
  async (doer, form) => {
    const { lengthUnit } = await getGallery();
    const read = waysInputIn(lengthUnit).safeParse(form, { error: fieldWords });
    if (!read.success) {
      const fields: Record<string, string> = {};
      for (const { path, message } of read.error.issues) fields[String(path[0])] ??= message;
      return refused({ message: 'Not yet: please look again at what is marked below.', fields });
    }
    const kept = await keepWays(doer, read.data);
    revalidatePath('/studio', 'layout');
    return answer(kept, routeRefusalMessage, () => done('Kept. Days and costs follow it now.'));
  },
);

/** Closes the studio for some days. */
export const closeStudioDays = formAction('studio.keep', closeDaysInput, async (doer, input) => {
  const closed = await closeDays(doer, input);
  revalidatePath('/studio', 'layout');
  return answer(closed, routeRefusalMessage, () => done('Closed. The days reckon with it.'));
});

/** Opens closed days again. */
export const openStudioDays = formAction('studio.keep', openDaysInput, async (doer, input) => {
  const opened = await openDays(doer, input);
  revalidatePath('/studio', 'layout');
  return answer(opened, routeRefusalMessage, () => done('Open again.'));
});

/** Keeps a bench, new or changed. */
export const keepStudioBench = formAction('studio.keep', keepBenchInput, async (doer, input) => {
  const kept = await keepBench(doer, input);
  revalidatePath('/studio', 'layout');
  return answer(kept, routeRefusalMessage, () => done('Kept.'));
});

/** Takes a bench away. */
export const takeBenchAway = formAction('studio.keep', endBenchInput, async (doer, input) => {
  const ended = await endBench(doer, input);
  revalidatePath('/studio', 'layout');
  return answer(ended, routeRefusalMessage, () => done('It is gone.'));
});

function done(message: string) {
  return { kind: 'done', message } as const;
}
