import { notFound, redirect } from 'next/navigation';
import { cache } from 'react';
import type { Actor } from '@/lib/access/rules';
import { findSheet, type Sheet } from '@/lib/commissions/reads/sheet';
import type { Act } from '@/lib/commissions/rules/acts';

/** The number in the address, as Next hands it on. */
export type SheetParams = Promise<{ number: string }>;

const findOnce = cache(findSheet);

/** The sheet of the number in the address; "not found" for anything else. */
export async function readSheet(actor: Actor, params: SheetParams): Promise<Sheet> {
  const { number } = await params;
  if (!/^[1-9]\d{0,8}$/.test(number)) notFound();
  const sheet = await findOnce(actor, Number(number));
  if (!sheet) notFound();
  return sheet;
}

/** The sheet for something to be done to it; once that cannot be done any more, the sheet itself. */
export async function readSheetFor(actor: Actor, params: SheetParams, act: Act): Promise<Sheet> {
  const sheet = await readSheet(actor, params);
  if (!sheet.acts.has(act)) redirect(`/commissions/${sheet.number}`);
  return sheet;
}
