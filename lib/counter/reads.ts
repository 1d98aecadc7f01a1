import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Doer } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { listPiecesById, type PiecePicture } from '@/lib/stock/reads';
import { listTaxPlaces, type TaxPlaceListed } from '@/lib/tax/reads';
import { readSlipFacts } from './reads/facts';
import { readSellingPlaces, type SellingPlace } from './reads/places';
import { readSetsById } from './reads/sets';
import { readSlipRow, type KeptSlip } from './reads/slip-row';
import { onTheSlip } from './rules/change';
import type { CounterFacts } from './rules/facts';
import { reckon, type Reckoned } from './rules/reckon';

/** The collector whose name is on a slip, with where things are sent to. */
export type SlipCollector = { id: string; name: string; address: string; state: string };

/** A slip as the counter shows it: as it would be sold at this moment. */
export type SlipShown = {
  slip: KeptSlip;
  reckoned: Reckoned;
  facts: CounterFacts;
  place: SellingPlace;
  /** Where else it could be sold. */
  places: readonly SellingPlace[];
  pictures: ReadonlyMap<string, PiecePicture>;
  collector: SlipCollector | null;
  zone: string;
};

/** A slip that cannot be shown: there is none, it was sold, thrown away, or its fair is over. */
export type SlipGone =
  | { code: 'unknown_slip' | 'slip_thrown_away' }
  | { code: 'slip_sold_already'; number: number }
  | { code: 'unknown_place'; slip: KeptSlip; places: readonly SellingPlace[] };

/**
 * A slip for the counter: the same pieces, rates and sums that a sale would use now.
 *
 * @returns the slip, or why it cannot be shown
 */
export async function getSlip(
  doer: Doer,
  slipId: string,
): Promise<{ shown: SlipShown } | { gone: SlipGone }> {
  assertAllowed(doer.actor, 'counter.sell');
  const slip = z.uuid().safeParse(slipId).success ? await readSlipRow(db(), slipId) : null;
  if (!slip) return { gone: { code: 'unknown_slip' } };
  if (slip.soldNumber !== null) {
    return { gone: { code: 'slip_sold_already', number: slip.soldNumber } };
  }
  if (slip.isThrownAway) return { gone: { code: 'slip_thrown_away' } };
  const gallery = await getGallery();
  const places = await readSellingPlaces(db(), gallery, dayOf(doer.at, gallery.timeZone));
  const read = await readSlipFacts(db(), doer, gallery, slip);
  if (!read) return { gone: { code: 'unknown_place', slip, places } };
  const { facts, place } = read;
  const [shown, collector] = await Promise.all([
    listPiecesById(doer.actor, [...facts.pieces.keys()]),
    findSlipCollector(slip.collectorId),
  ]);
  const pictures = new Map(
    shown.flatMap(({ id, picture }) => (picture ? [[id, picture] as const] : [])),
  );
  const reckoned = reckon(slip.content, facts);
  const zone = gallery.timeZone;
  return { shown: { slip, reckoned, facts, place, places, pictures, collector, zone } };
}

/**
 * A slip that is still being written, and how many of a piece are on it: for what is put on it
 * next. Null when it is none, or was sold or thrown away.
 */
export async function findSlipBeingWritten(
  actor: Doer['actor'],
  slipId: string,
): Promise<{ slip: KeptSlip; taken: (skuId: string) => number } | null> {
  assertAllowed(actor, 'counter.sell');
  const slip = await readSlipRow(db(), slipId);
  if (!slip || slip.soldNumber !== null || slip.isThrownAway) return null;
  const setIds = slip.content.lines.flatMap((line) => (line.kind === 'set' ? [line.setId] : []));
  const sets = setIds.length > 0 ? await readSetsById(db(), setIds) : [];
  return { slip, taken: (skuId) => onTheSlip(slip.content, skuId, sets) };
}

async function findSlipCollector(id: string | null): Promise<SlipCollector | null> {
  if (id === null) return null;
  const row = await db().collector.findUnique({
    where: { id },
    select: { id: true, name: true, street: true, city: true, state: true, postcode: true },
  });
  if (!row) return null;
  const { name, street, city, state, postcode } = row;
  const town = [city, [state, postcode].filter(Boolean).join(' ')].filter(Boolean).join(', ');
  return {
    ...{ id: row.id, name, state: state ?? '' },
    address: street || town ? [name, street, town].filter(Boolean).join('\n') : '',
  };
}

/** Designers who get a referral fee for whom they bring, by name; at most two hundred. */
export async function listReferringDesigners(
  actor: Doer['actor'],
): Promise<{ id: string; name: string }[]> {
  assertAllowed(actor, 'counter.sell');
  return db().collector.findMany({
    where: {
      mergedIntoId: null,
      erasedAt: null,
      OR: [{ tradeTerms: gets }, { merged: { some: { tradeTerms: gets } } }],
    },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: designersMost,
    select: { id: true, name: true },
  });
}

const designersMost = 200;
const gets = { way: 'referral_fee' } as const;

/** The places whose sales tax may apply to what is sent or hung, for the counter to choose from. */
export async function listTaxPlacesToChoose(actor: Doer['actor']): Promise<TaxPlaceListed[]> {
  assertAllowed(actor, 'counter.sell');
  return listTaxPlaces();
}

/** The id of a commission by the number on its papers; null when there is none. */
export async function findCommissionId(
  actor: Doer['actor'],
  number: number,
): Promise<string | null> {
  assertAllowed(actor, 'counter.sell');
  const where = { number: Math.min(number, 2_147_483_647) };
  const found = await db().commission.findUnique({ where, select: { id: true } });
  return found?.id ?? null;
}
