'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction } from '@/app/form-action';
import { careDoneInput, setLooksInput } from '@/lib/installation/input/care/done';
import { mendSnagInput, writeSnagInput } from '@/lib/installation/input/work/snags';
import { careRefusalMessage } from '@/lib/installation/rules/care/refusals';
import { workRefusalMessage } from '@/lib/installation/rules/work/refusals';
import { careDone } from '@/lib/installation/writes/care/done';
import { setLooks } from '@/lib/installation/writes/care/set-looks';
import { mendSnag, writeSnag } from '@/lib/installation/writes/work/snags';
import { getGallery } from '@/lib/platform/settings';

/** Writes down something that is to be put right. */
export const writeItDown = formAction('installation.do', writeSnagInput, async (doer, input) => {
  const written = await writeSnag(doer, input);
  const { timeZone } = await getGallery();
  revalidatePath('/', 'layout');
  return answer(
    written,
    (refusal) => workRefusalMessage(refusal, timeZone),
    () => ({ kind: 'done', message: 'It is written down.' }),
  );
});

/** Says that something was put right. */
export const putRight = formAction('installation.do', mendSnagInput, async (doer, input) => {
  const mended = await mendSnag(doer, input);
  const { timeZone } = await getGallery();
  revalidatePath('/', 'layout');
  return answer(
    mended,
    (refusal) => workRefusalMessage(refusal, timeZone),
    () => ({ kind: 'done', message: 'It is put right.' }),
  );
});

/** Says how a look after a piece went. */
export const lookedAfter = formAction('installation.do', careDoneInput, async (doer, input) => {
  const looked = await careDone(doer, input);
  revalidatePath('/', 'layout');
  return answer(looked, careRefusalMessage, () => ({ kind: 'done', message: 'Written down.' }));
});

/** Sets the looks after a piece that was handed over without a work order. */
export const setThem = formAction('installation.do', setLooksInput, async (doer, input) => {
  const set = await setLooks(doer, input);
  revalidatePath('/', 'layout');
  return answer(set, careRefusalMessage, () => ({ kind: 'done', message: 'They are set.' }));
});
