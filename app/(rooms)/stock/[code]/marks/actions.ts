'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { answer, formAction, refused } from '@/app/form-action';
import { stateEditionInput } from '@/lib/catalogue/input/moulds';
import { endColourwayInput, pieceFactsInput } from '@/lib/catalogue/input/pieces';
import { stateEditionRefusalMessage } from '@/lib/catalogue/rules/edition';
import { pieceRefusalMessage } from '@/lib/catalogue/rules/pieces';
import { stateEdition } from '@/lib/catalogue/writes/editions';
import { changePieceFacts, endColourway } from '@/lib/catalogue/writes/pieces';
import { markAsSecondInput } from '@/lib/stock/input/second';
import { secondRefusalMessage } from '@/lib/stock/rules/marks/second';
import { markAsSecond } from '@/lib/stock/writes/mark-as-second';

/** Marks pieces as seconds, and leads to where they are kept now. */
export const markSecond = formAction(
  'catalogue.keep',
  markAsSecondInput.extend({ picture: z.instanceof(File).optional() }),
  async (doer, { picture, ...input }) => {
    const bytes = picture ? { picture: new Uint8Array(await picture.arrayBuffer()) } : {};
    const marked = await markAsSecond(doer, { ...input, ...bytes });
    if (!marked.ok) return refused(secondRefusalMessage(marked.refusal));
    revalidatePath('/stock', 'layout');
    redirect(`/stock/${marked.value.code}`);
  },
);

/** States an edition, once. */
export const stateAsEdition = formAction(
  'catalogue.keep',
  stateEditionInput,
  async (doer, input) => {
    const stated = await stateEdition(doer, input);
    revalidatePath('/stock', 'layout');
    return answer(stated, stateEditionRefusalMessage, () => ({
      kind: 'done',
      message: `Stated: ${input.size} and no more, for good.`,
    }));
  },
);

/** Changes what the label says. */
export const changeLabel = formAction('catalogue.keep', pieceFactsInput, async (doer, input) => {
  const changed = await changePieceFacts(doer, input);
  revalidatePath('/stock', 'layout');
  return answer(changed, pieceRefusalMessage, () => ({ kind: 'done', message: 'Written down.' }));
});

/** Says since when the glazes of a colourway are no longer made. */
export const changeColourway = formAction(
  'catalogue.keep',
  endColourwayInput,
  async (doer, input) => {
    const changed = await endColourway(doer, input);
    revalidatePath('/stock', 'layout');
    return answer(changed, pieceRefusalMessage, ({ name }) => ({
      kind: 'done',
      message: input.endedOn === null ? `${name} is made.` : `${name} is no longer made.`,
    }));
  },
);
