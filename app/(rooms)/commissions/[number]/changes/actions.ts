'use server';

import { headers } from 'next/headers';
import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { deviceWords } from '@/lib/access/rules/device';
import {
  askForChangesInput,
  giveTwinInput,
  measureFiredInput,
  signYesInput,
} from '@/lib/commissions/input/colours/showing';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { signYes } from '@/lib/commissions/writes/colours/approve';
import { askForChanges } from '@/lib/commissions/writes/colours/changes';
import { giveTwin, measureFired } from '@/lib/commissions/writes/colours/tiles';
import { sheetHref } from '../../sheet-href';

/** The collector says yes here, and signs on our screen. */
export const signTheirYes = formAction('commissions.write', signYesInput, async (doer, input) => {
  const device = deviceWords((await headers()).get('user-agent') ?? '');
  const said = await signYes(doer, input, device);
  if (!said.ok) return refused(commissionRefusalMessage(said.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(said.value.commissionNumber, 'yes'));
});

/** Writes down the changes that a collector asked for here. */
export const noteChanges = formAction(
  'commissions.write',
  askForChangesInput,
  async (doer, input) => {
    const device = deviceWords((await headers()).get('user-agent') ?? '');
    const asked = await askForChanges(doer, input, device);
    if (!asked.ok) return refused(commissionRefusalMessage(asked.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(asked.value.commissionNumber, 'changes'));
  },
);

/** Gives the twin of a tile to the collector. */
export const handTwin = formAction('commissions.write', giveTwinInput, async (doer, input) => {
  const given = await giveTwin(doer, input);
  if (!given.ok) return refused(commissionRefusalMessage(given.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(given.value.commissionNumber, 'given'));
});

/** Holds a fired part against its tile. */
export const holdAgainst = formAction(
  'commissions.write',
  measureFiredInput,
  async (doer, input) => {
    const held = await measureFired(doer, input);
    if (!held.ok) return refused(commissionRefusalMessage(held.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(held.value.commissionNumber, 'fired'));
  },
);
