'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { getGallery } from '@/lib/platform/settings';
import {
  callOffInput,
  keepScheduleInput,
  layLineInput,
  lightKilnInput,
  noteReadingInput,
  planFiringInput,
  takeLineOutInput,
} from '@/lib/studio/input/firings';
import { openKilnInput } from '@/lib/studio/input/opening';
import { getStudioSettings } from '@/lib/studio/reads/settings';
import {
  lightRefusalMessage,
  lineRefusalMessage,
  openingRefusalMessage,
  planRefusalMessage,
  readingRefusalMessage,
  scheduleRefusalMessage,
} from '@/lib/studio/rules/firings/words';
import { lightKiln, noteReading } from '@/lib/studio/writes/firings/light';
import { layLine, takeLineOut } from '@/lib/studio/writes/firings/lines';
import { openKiln } from '@/lib/studio/writes/firings/open';
import { callOffFiring, keepSchedule, planFiring } from '@/lib/studio/writes/firings/plan';

/** Plans a firing with its proposed load; leads to its page. */
export const sendPlan = formAction('studio.move', planFiringInput, async (doer, input) => {
  const planned = await planFiring(doer, input);
  if (!planned.ok) return refused(planRefusalMessage(planned.refusal));
  return told(planned.value.number, 'planned');
});

/** Lays pieces into a load, or changes what of a job lies in it. */
export const sendLine = formAction('studio.move', layLineInput, async (doer, input) => {
  const laid = await layLine(doer, input);
  if (!laid.ok) return refused(lineRefusalMessage(laid.refusal));
  return told(laid.value.firingNumber, 'laid', 'load');
});

/** Takes a line out of a load. */
export const sendLineOut = formAction('studio.move', takeLineOutInput, async (doer, input) => {
  const out = await takeLineOut(doer, input);
  if (!out.ok) return refused(lineRefusalMessage(out.refusal));
  return told(out.value.firingNumber, 'out', 'load');
});

/** Keeps how a firing is to go. */
export const sendSchedule = formAction('studio.move', keepScheduleInput, async (doer, input) => {
  const kept = await keepSchedule(doer, input);
  if (!kept.ok) return refused(scheduleRefusalMessage(kept.refusal));
  return told(kept.value.number, 'scheduled', 'schedule');
});

/** Calls a firing off before it is lit. */
export const sendCalledOff = formAction('studio.move', callOffInput, async (doer, input) => {
  const off = await callOffFiring(doer, input);
  if (!off.ok) return refused(lineRefusalMessage(off.refusal));
  return told(off.value.number, 'off');
});

/** Lights a kiln. */
export const sendLit = formAction('studio.move', lightKilnInput, async (doer, input) => {
  const lit = await lightKiln(doer, input);
  if (!lit.ok) return refused(lightRefusalMessage(lit.refusal));
  return told(lit.value.number, 'lit');
});

/** Writes down what a kiln reads. */
export const sendReading = formAction('studio.move', noteReadingInput, async (doer, input) => {
  const noted = await noteReading(doer, input);
  if (!noted.ok) return refused(readingRefusalMessage(noted.refusal));
  return told(noted.value.number, 'read', 'readings');
});

/** Opens a kiln and writes down how each piece came out. */
export const sendOpened = formAction('studio.move', openKilnInput, async (doer, input) => {
  const opened = await openKiln(doer, input);
  if (opened.ok) return told(opened.value.number, 'opened');
  const [{ timeZone: zone }, { degrees: scale }] = await Promise.all([
    getGallery(),
    getStudioSettings(),
  ]);
  return refused(openingRefusalMessage(opened.refusal, { scale, zone }));
});

function told(number: number, done: string, place = ''): never {
  revalidatePath('/studio', 'layout');
  redirect(`/studio/firings/${number}?done=${done}${place && `#${place}`}`);
}
