import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { AddTileInput, TellTileInput } from '../input';
import type { GlazeRefusal } from '../rules';
import { inTheBook, keepChosen, starsOf, tellOfGlaze, todayOf } from './once';

/** Which test tile it was. */
export type TileActed = { glazeId: string; number: number };

/**
 * Writes a test tile down; it gets the next number.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, an unknown glaze, a recipe that is not this glaze's, an unknown clay body, a
 *   firing that is not in the log or not opened, one of another cone, a day to come
 */
export async function addTile(
  doer: Doer,
  { requestKey: key, raw, fired, ...input }: AddTileInput,
): Promise<Result<TileActed, GlazeRefusal>> {
  const command = { name: 'addTile', key, input, pictures: { raw, fired } };
  return inTheBook(doer, command, async (tx, pictures) => {
    const { glazeId, recipeId, bodyId, cone, coats, firingId, madeOn, note, lab } = input;
    const fits = await whatItNames(tx, input);
    if (!fits.ok) return fits;
    if (madeOn > (await todayOf(tx, doer))) return refuse({ code: 'day_to_come', on: madeOn });
    const rawFileId = (await keepChosen(tx, doer, pictures.raw)) ?? null;
    const firedFileId = (await keepChosen(tx, doer, pictures.fired)) ?? null;
    const { number } = await tx.testTile.create({
      data: {
        ...{ glazeId, recipeId, bodyId, cone, coats, firingId, note, rawFileId, firedFileId },
        ...{ madeOn: dateFromDay(madeOn), ...starsOf(lab), staffId: doer.actor.id, at: doer.at },
      },
      select: { number: true },
    });
    const facts = { name: fits.value.name, number, cone, coats, note };
    await tellOfGlaze(tx, doer, { did: `wrote test tile ${number} down`, glazeId, facts });
    return ok({ glazeId, number });
  });
}

async function whatItNames(
  tx: Tx,
  tile: Pick<AddTileInput, 'glazeId' | 'recipeId' | 'bodyId' | 'firingId' | 'cone'>,
): Promise<Result<{ name: string }, GlazeRefusal>> {
  const { glazeId, recipeId, bodyId } = tile;
  const glaze = await tx.glaze.findUnique({ where: { id: glazeId }, select: { name: true } });
  if (!glaze) return refuse({ code: 'unknown_glaze' });
  const isRecipe =
    recipeId === null || (await tx.glazeRecipe.count({ where: { id: recipeId, glazeId } })) > 0;
  if (!isRecipe) return refuse({ code: 'unknown_recipe' });
  const isBody = bodyId === null || (await tx.clayBody.count({ where: { id: bodyId } })) > 0;
  if (!isBody) return refuse({ code: 'unknown_body' });
  const fired = await firingFits(tx, tile);
  return fired.ok ? ok(glaze) : fired;
}

async function firingFits(
  tx: Tx,
  { firingId, cone }: Pick<AddTileInput, 'firingId' | 'cone'>,
): Promise<Result<true, GlazeRefusal>> {
  if (firingId === null) return ok(true);
  const firing = await tx.firing.findUnique({
    where: { id: firingId },
    select: { cone: true, opened: { select: { firingId: true } } },
  });
  if (!firing?.opened) return refuse({ code: 'unknown_firing' });
  if (firing.cone !== cone) return refuse({ code: 'firing_of_another_cone', cone: firing.cone });
  return ok(true);
}

/**
 * Says what became of a test tile: its firing, its pictures, its colour, what was found.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, an unknown tile, a firing that is not in the log or not opened, one of another
 *   cone
 */
export async function tellTile(
  doer: Doer,
  { requestKey: key, raw, fired, ...input }: TellTileInput,
): Promise<Result<TileActed, GlazeRefusal>> {
  const command = { name: 'tellTile', key, input, pictures: { raw, fired } };
  return inTheBook(doer, command, async (tx, pictures) => {
    const { tileId, firingId, lab, note } = input;
    const tile = await tx.testTile.findUnique({
      where: { id: tileId },
      select: { number: true, cone: true, glazeId: true, glaze: { select: { name: true } } },
    });
    if (!tile) return refuse({ code: 'unknown_tile' });
    const fits = await firingFits(tx, { firingId, cone: tile.cone });
    if (!fits.ok) return fits;
    const rawFileId = await keepChosen(tx, doer, pictures.raw);
    const firedFileId = await keepChosen(tx, doer, pictures.fired);
    await tx.testTile.update({
      where: { id: tileId },
      data: {
        ...{ firingId, note, ...starsOf(lab) },
        ...(rawFileId === undefined ? {} : { rawFileId }),
        ...(firedFileId === undefined ? {} : { firedFileId }),
      },
      select: { id: true },
    });
    const { number, glazeId } = tile;
    const facts = { name: tile.glaze.name, number, lab, note };
    await tellOfGlaze(tx, doer, { did: `told of test tile ${number}`, glazeId, facts });
    return ok({ glazeId, number });
  });
}
