'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { after } from 'next/server';
import { formAction, refused } from '@/app/form-action';
import { bringInInput, lookAtFileInput, stopLoadInput } from '@/lib/data/input';
import { dataRefusalMessage, fileBytesMost } from '@/lib/data/rules/refusals';
import { askToStop, beginLoad, lookAtFile } from '@/lib/data/writes';
import { carryLoad } from '@/lib/data/writes/carry-load';

/** Looks at a file, and leads to what it would do. */
export const lookAt = formAction('data.bring_in', lookAtFileInput, async (doer, input) => {
  const { requestKey, kind, file } = input;
  if (file.size > fileBytesMost) return atFile(dataRefusalMessage({ code: 'file_too_large' }));
  const bytes = new Uint8Array(await file.arrayBuffer());
  const shown = await lookAtFile(doer, { requestKey, kind, fileName: file.name, bytes });
  if (!shown.ok) return atFile(dataRefusalMessage(shown.refusal));
  redirect(`/data/look/${shown.value.loadId}`);
});

function atFile(message: string) {
  return refused({ message, fields: { file: message } });
}

/** Begins to bring a file in; the work goes on after the answer, and its page tells how far it is. */
export const bringIn = formAction('data.bring_in', bringInInput, async (doer, input) => {
  const { requestKey, loadId, planSha256, refusedLines, leaveRefusedOut } = input;
  if (refusedLines > 0 && leaveRefusedOut === undefined) {
    const message = dataRefusalMessage({ code: 'lines_refused', lines: refusedLines });
    return refused({ message, fields: { leaveRefusedOut: 'Tick this to go on without them.' } });
  }
  const begun = await beginLoad(doer, { requestKey, loadId });
  if (!begun.ok) return refused(dataRefusalMessage(begun.refusal));
  const agreed = { ...begun.value, planSha256, leaveRefusedOut: leaveRefusedOut === 'yes' };
  after(async () => {
    await carryLoad(doer, agreed);
  });
  redirect(`/data/loads/${begun.value.loadId}`);
});

/** Asks a file that is under way to stop. */
export const stopLoad = formAction('stock.load', stopLoadInput, async (doer, { loadId }) => {
  const asked = await askToStop(doer, { loadId });
  revalidatePath(`/data/loads/${loadId}`);
  if (!asked.ok) return refused(dataRefusalMessage(asked.refusal));
  redirect(`/data/loads/${loadId}`);
});
