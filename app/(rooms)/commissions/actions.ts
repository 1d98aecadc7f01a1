'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import {
  addPicturesInput,
  changeRequestInput,
  logCommissionInput,
} from '@/lib/commissions/input/request';
import {
  approveInput,
  showColourTileInput,
  showSketchInput,
} from '@/lib/commissions/input/colours/showing';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { addPictures, changeRequest, logCommission } from '@/lib/commissions/writes/request';
import { approve } from '@/lib/commissions/writes/colours/approve';
import { showColourTile, showSketch } from '@/lib/commissions/writes/colours/show';
import { enquiryWords } from './asking/enquiry-words';
import { sheetHref } from './sheet-href';

/** Logs what a collector asks for; leads to the new sheet. */
export const log = formAction('commissions.write', logCommissionInput, async (doer, input) => {
  const logged = await logCommission(doer, input);
  if (!logged.ok) return refused(enquiryWords(logged.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(logged.value.number, 'logged'));
});

/** Writes down what is known now of a request. */
export const change = formAction('commissions.write', changeRequestInput, async (doer, input) => {
  const changed = await changeRequest(doer, input);
  if (!changed.ok) return refused(enquiryWords(changed.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(changed.value.number, 'changed'));
});

/** Adds pictures to a request. */
export const bringPictures = formAction(
  'commissions.write',
  addPicturesInput,
  async (doer, input) => {
    const added = await addPictures(doer, input);
    if (!added.ok) return refused(commissionRefusalMessage(added.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(added.value.number, 'pictures'));
  },
);

/** Shows a sketch. */
export const bringSketch = formAction('commissions.write', showSketchInput, async (doer, input) => {
  const shown = await showSketch(doer, input);
  if (!shown.ok) return refused(commissionRefusalMessage(shown.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(shown.value.commissionNumber, 'sketch'));
});

/** Shows a colour tile. */
export const bringColours = formAction(
  'commissions.write',
  showColourTileInput,
  async (doer, input) => {
    const shown = await showColourTile(doer, input);
    if (!shown.ok) return refused(commissionRefusalMessage(shown.refusal));
    revalidatePath('/', 'layout');
    redirect(sheetHref(shown.value.commissionNumber, 'colours'));
  },
);

/** Writes down a yes to exactly what was looked at. */
export const sayYes = formAction('commissions.write', approveInput, async (doer, input) => {
  const given = await approve(doer, input);
  if (!given.ok) return refused(commissionRefusalMessage(given.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(given.value.commissionNumber, 'yes'));
});
