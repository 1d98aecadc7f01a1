import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { livingId } from '@/lib/collectors/reads/group';
import { readTradeTerms } from '@/lib/collectors/reads/trade';
import { dayOf } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { readSlipFacts } from '../reads/facts';
import { readSellingPlaces } from '../reads/places';
import type { KeptSlip } from '../reads/slip-row';
import { changeSlip, type SlipChange } from '../rules/change';
import { reckon } from '../rules/reckon';
import type { CounterRefusal } from '../rules/refusals';
import type { SlipToKeep } from './keep-slip';

/** A change of the slip's row: whose name is on it, where it is sold, whether it is set aside. */
export type RowChange =
  | { does: 'name'; collectorId: string | null }
  | { does: 'place'; placeId: string }
  | { does: 'aside'; asideAs: string | null };

/** Refusals by which a change is not taken, so that the slip stays one that can be sold. */
const judged: Partial<Record<SlipChange['does'], readonly CounterRefusal['code'][]>> = {
  discount: ['discount_above_price', 'discount_beyond_leave'],
  numbers: ['number_not_here', 'held_for_another'],
  trade: ['no_trade_price', 'discount_or_fee_never_both'],
  referred: [
    ...(['unknown_designer', 'designer_is_the_buyer'] as const),
    ...(['no_referral_terms', 'discount_or_fee_never_both'] as const),
  ],
  resale: ['certificate_does_not_hold'],
  collect: ['collect_day_has_passed'],
};

/**
 * What a change makes of a slip; reads in the caller's transaction, and writes nothing.
 *
 * @returns refuses a collector, a place or a tax place that nobody knows, and what could not be sold
 *   because of the change itself
 */
export async function decideChange(
  tx: Tx,
  doer: Doer,
  slip: KeptSlip,
  change: SlipChange | RowChange,
): Promise<Result<SlipToKeep, CounterRefusal>> {
  if (change.does === 'name') return nameOn(tx, doer, slip, change.collectorId);
  if (change.does === 'place') return soldFrom(tx, doer, slip, change.placeId);
  if (change.does === 'aside') return ok({ content: slip.content, asideAs: change.asideAs });
  return onContent(tx, doer, slip, change);
}

async function nameOn(
  tx: Tx,
  doer: Doer,
  { content }: KeptSlip,
  asked: string | null,
): Promise<Result<SlipToKeep, CounterRefusal>> {
  if (asked === null) {
    const plain = { ...content, atTradePrice: false, forResale: false };
    return ok({ content: plain, collectorId: null });
  }
  const collectorId = await livingId(tx, asked);
  if (!collectorId) return refuse({ code: 'unknown_collector', collectorId: asked });
  const { timeZone } = await getGallery(tx);
  const terms = await readTradeTerms(tx, collectorId);
  const gets = terms?.way === 'discount' && terms.sinceOn <= dayOf(doer.at, timeZone);
  const atTradePrice = gets && content.referredById === null;
  return ok({ content: { ...content, atTradePrice, forResale: false }, collectorId });
}

async function soldFrom(
  tx: Tx,
  doer: Doer,
  { content }: KeptSlip,
  placeId: string,
): Promise<Result<SlipToKeep, CounterRefusal>> {
  const gallery = await getGallery(tx);
  const places = await readSellingPlaces(tx, gallery, dayOf(doer.at, gallery.timeZone));
  if (!places.some((place) => place.placeId === placeId)) return refuse({ code: 'unknown_place' });
  return ok({ content, placeId });
}

async function onContent(
  tx: Tx,
  doer: Doer,
  slip: KeptSlip,
  change: SlipChange,
): Promise<Result<SlipToKeep, CounterRefusal>> {
  if (change.does === 'deliver' && change.delivery.way !== 'taken') {
    const where = { id: change.delivery.taxPlaceId };
    const known = await tx.taxPlace.findUnique({ where, select: { id: true } });
    if (!known) return refuse({ code: 'unknown_tax_place' });
  }
  const content = changeSlip(slip.content, change, doer.actor.id);
  const codes = judged[change.does];
  if (!codes) return ok({ content });
  const read = await readSlipFacts(tx, doer, await getGallery(tx), { ...slip, content });
  if (!read) return refuse({ code: 'unknown_place' });
  const before = new Set(
    reckon(slip.content, read.facts).faults.map(({ refusal }) => refusal.code),
  );
  const fault = reckon(content, read.facts).faults.find(
    ({ refusal }) => codes.includes(refusal.code) && !before.has(refusal.code),
  );
  return fault ? refuse(fault.refusal) : ok({ content });
}
