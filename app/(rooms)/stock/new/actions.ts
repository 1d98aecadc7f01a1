'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { fieldWords } from '@/app/form-words';
import { formAction, refused } from '@/app/form-action';
import { addPieceInput } from '@/lib/catalogue/input/pieces';
import { pieceRefusalMessage } from '@/lib/catalogue/rules/pieces';
import { addPiece } from '@/lib/catalogue/writes/pieces';
import { getGallery } from '@/lib/platform/settings';

/** Writes a new piece down; what a length without a unit means is the gallery's own. */
export const add = formAction(
  'catalogue.keep',
  z.record(z.string(), z.string()),
  async (doer, form) => {
    const { lengthUnit } = await getGallery();
    const read = addPieceInput(lengthUnit).safeParse(form, { error: fieldWords });
    if (!read.success) {
      const fields: Record<string, string> = {};
      for (const { path, message } of read.error.issues) fields[path.join('.')] ??= message;
      return refused({ message: 'Not yet: please look again at what is marked below.', fields });
    }
    const added = await addPiece(doer, read.data);
    if (!added.ok) {
      const message = pieceRefusalMessage(added.refusal);
      const field = added.refusal.code === 'gtin_taken' ? 'gtin' : 'code';
      return refused({ message, fields: { [field]: message } });
    }
    revalidatePath('/stock', 'layout');
    redirect(`/stock/${added.value.code}`);
  },
);
