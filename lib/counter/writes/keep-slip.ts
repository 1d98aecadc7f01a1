import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { db } from '@/lib/platform/db/client';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { readSellingPlaces } from '../reads/places';
import { readSlipRow, type KeptSlip } from '../reads/slip-row';
import type { CounterRefusal } from '../rules/refusals';
import { emptySlip, wordsOn, writeSlip, type SlipContent } from '../rules/slip';

/**
 * Finds a slip that may still be changed; joins the caller's transaction.
 *
 * @param version what the person had before them; null where it does not matter
 * @returns refuses, in this order: unknown, sold, thrown away, changed meanwhile
 */
export async function findOpenSlip(
  tx: Tx,
  slipId: string,
  version: number | null,
): Promise<Result<KeptSlip, CounterRefusal>> {
  const slip = await readSlipRow(tx, slipId);
  if (!slip) return refuse({ code: 'unknown_slip' });
  if (slip.soldNumber !== null) {
    return refuse({ code: 'slip_sold_already', number: slip.soldNumber });
  }
  if (slip.isThrownAway) return refuse({ code: 'slip_thrown_away' });
  if (version !== null && slip.version !== version) {
    return refuse({ code: 'slip_changed_meanwhile' });
  }
  return ok(slip);
}

/**
 * Where somebody's next slip begins: where they sold last on that day, so that whoever stands at a
 * fair need not say so each time; otherwise at the gallery's counter.
 *
 * It is read before the transaction that opens the slip: tills do not wait for each other then.
 */
export async function readWhereToSell(doer: Doer): Promise<string> {
  const gallery = await getGallery();
  const on = dayOf(doer.at, gallery.timeZone);
  const before = await db().slip.findFirst({
    where: { staffId: doer.actor.id },
    orderBy: [{ openedAt: 'desc' }, { id: 'desc' }],
    select: { placeId: true, openedAt: true },
  });
  const isOfToday = before !== null && dayOf(before.openedAt, gallery.timeZone) === on;
  if (!isOfToday || before.placeId === gallery.counterId) return gallery.counterId;
  const places = await readSellingPlaces(db(), gallery, on);
  return places.find((each) => each.placeId === before.placeId)?.placeId ?? gallery.counterId;
}

/**
 * Opens a new slip with nothing on it; joins the caller's transaction.
 *
 * @param id an id that a page has made for it already, or null
 */
export async function openSlip(
  tx: Tx,
  doer: Doer,
  { id, placeId }: { id: string | null; placeId: string },
): Promise<KeptSlip> {
  const slip = {
    ...{ id: id ?? newId(), version: 1, placeId, collectorId: null },
    ...{ asideAs: null, openedAt: doer.at, changedAt: doer.at },
  };
  await tx.slip.create({
    data: { ...slip, content: writeSlip(emptySlip), staffId: doer.actor.id },
    select: { id: true },
  });
  return { ...slip, content: emptySlip, soldNumber: null, isThrownAway: false };
}

/** What a change leaves on the slip's row. */
export type SlipToKeep = {
  content: SlipContent;
  collectorId?: string | null;
  placeId?: string;
  asideAs?: string | null;
};

/**
 * Writes a slip's new content, one version up; joins the caller's transaction.
 *
 * @returns refuses `card_number_typed` when any words on it look like the number of a card
 */
export async function keepSlip(
  tx: Tx,
  doer: Doer,
  slip: KeptSlip,
  kept: SlipToKeep,
): Promise<Result<true, CounterRefusal>> {
  if ([...wordsOn(kept.content), kept.asideAs ?? ''].some(looksLikeCardNumber)) {
    return refuse({ code: 'card_number_typed' });
  }
  const { content, ...columns } = kept;
  const { count } = await tx.slip.updateMany({
    where: { id: slip.id, version: slip.version, saleId: null },
    data: {
      ...columns,
      content: writeSlip(content),
      version: slip.version + 1,
      staffId: doer.actor.id,
      changedAt: doer.at,
    },
  });
  return count === 1 ? ok(true) : refuse({ code: 'slip_changed_meanwhile' });
}
