import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { AddGlazeInput, ChangeGlazeInput } from '../input';
import type { GlazeRefusal } from '../rules';
import { inTheBook, keepChosen, starsOf, tellOfGlaze } from './once';
import { writeRecipeStep } from './recipes';

/** Which glaze it was. */
export type GlazeActed = { glazeId: string; name: string };

/**
 * Writes a glaze into the book, with its first recipe where one was typed.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, a name that is taken in any case of letters, a recipe that is none
 */
export async function addGlaze(
  doer: Doer,
  { requestKey: key, raw, fired, ...input }: AddGlazeInput,
): Promise<Result<GlazeActed, GlazeRefusal>> {
  const command = { name: 'addGlaze', key, input, pictures: { raw, fired } };
  return inTheBook(doer, command, async (tx, pictures) => {
    const { name, cone, coats, note, lab, base, additions } = input;
    if (await isTaken(tx, name)) return refuse({ code: 'glaze_name_taken', name });
    const rawFileId = (await keepChosen(tx, doer, pictures.raw)) ?? null;
    const firedFileId = (await keepChosen(tx, doer, pictures.fired)) ?? null;
    const { id: glazeId } = await tx.glaze.create({
      data: {
        ...{ name, cone, coats, note, rawFileId, firedFileId, createdAt: doer.at },
        ...starsOf(lab),
      },
      select: { id: true },
    });
    await tellOfGlaze(tx, doer, {
      did: 'wrote a glaze into the book',
      glazeId,
      facts: { name, cone, coats },
    });
    if (base.length + additions.length === 0) return ok({ glazeId, name });
    const written = await writeRecipeStep(tx, doer, { glazeId, base, additions, note: '' });
    return written.ok ? ok({ glazeId, name }) : written;
  });
}

/**
 * Changes what is known of a glaze; a picture stays where no other is chosen. Recipes are never
 * changed: see `writeRecipe`.
 *
 * @returns refuses as {@link addGlaze}, an unknown glaze before the name
 */
export async function changeGlaze(
  doer: Doer,
  { requestKey: key, raw, fired, ...input }: ChangeGlazeInput,
): Promise<Result<GlazeActed, GlazeRefusal>> {
  const command = { name: 'changeGlaze', key, input, pictures: { raw, fired } };
  return inTheBook(doer, command, async (tx, pictures) => {
    const { glazeId, name, cone, coats, note, lab, endedOn } = input;
    const kept = await tx.glaze.findUnique({ where: { id: glazeId }, select: { name: true } });
    if (!kept) return refuse({ code: 'unknown_glaze' });
    if (await isTaken(tx, name, glazeId)) return refuse({ code: 'glaze_name_taken', name });
    const rawFileId = await keepChosen(tx, doer, pictures.raw);
    const firedFileId = await keepChosen(tx, doer, pictures.fired);
    await tx.glaze.update({
      where: { id: glazeId },
      data: {
        ...{ name, cone, coats, note, ...starsOf(lab) },
        ...(rawFileId === undefined ? {} : { rawFileId }),
        ...(firedFileId === undefined ? {} : { firedFileId }),
        endedOn: endedOn === null ? null : dateFromDay(endedOn),
      },
      select: { id: true },
    });
    const facts = { name, before: kept.name, cone, coats, endedOn };
    await tellOfGlaze(tx, doer, { did: 'changed what is known of a glaze', glazeId, facts });
    return ok({ glazeId, name });
  });
}

async function isTaken(tx: Tx, name: string, besidesId?: string): Promise<boolean> {
  const same = await tx.glaze.findFirst({
    where: {
      name: { equals: name, mode: Prisma.QueryMode.insensitive },
      ...(besidesId === undefined ? {} : { id: { not: besidesId } }),
    },
    select: { id: true },
  });
  return same !== null;
}
