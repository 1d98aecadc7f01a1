import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { isAllowed, type Doer } from '@/lib/access/rules';
import { readSetsOf } from '@/lib/catalogue/reads';
import type { KeptSet } from '@/lib/catalogue/rules/sets';
import { livingId } from '@/lib/collectors/reads/group';
import { readCertificateFor, readTradeTerms } from '@/lib/collectors/reads/trade';
import type { CertificateStanding } from '@/lib/collectors/rules/trade';
import { dayOf } from '@/lib/dates/rules';
import { readHolds } from '@/lib/holds/reads';
import type { Gallery } from '@/lib/platform/settings';
import { readPiecesForSale } from '@/lib/sales/reads';
import { readNumbersAt } from '@/lib/stock/reads/numbers';
import { readTaxSetting } from '@/lib/tax/reads';
import type { TaxSetting } from '@/lib/tax/rules/treatment';
import type { CounterFacts } from '../rules/facts';
import type { SlipContent } from '../rules/slip';
import { readPapers } from './papers';
import { readSellingPlaces, type SellingPlace } from './places';
import { readSetsById } from './sets';
import type { KeptSlip } from './slip-row';

/** Where a slip is sold, and everything that is true about what is on it. */
export type SlipFacts = { facts: CounterFacts; place: SellingPlace; taxPlaceId: string };

type SlipToLookAt = Pick<KeptSlip, 'content' | 'placeId' | 'collectorId'>;

/**
 * Everything that a slip is reckoned with, as it is at this moment. Asks nobody for leave.
 *
 * @returns null when nothing is sold from the slip's place on that day: a fair that is over
 */
export async function readSlipFacts(
  from: Prisma.TransactionClient,
  doer: Doer,
  gallery: Gallery,
  slip: SlipToLookAt,
): Promise<SlipFacts | null> {
  const { content, placeId, collectorId } = slip;
  const on = dayOf(doer.at, gallery.timeZone);
  const places = await readSellingPlaces(from, gallery, on);
  const place = places.find((each) => each.placeId === placeId);
  if (!place) return null;
  const { delivery } = content;
  const taxPlaceId = delivery.way === 'taken' ? place.taxPlaceId : delivery.taxPlaceId;
  const tax = await readTaxOf(from, { taxPlaceId, place, on });
  const facts: CounterFacts = {
    ...{ askerId: doer.actor.id, askedAt: doer.at, on, collectorId, tax },
    ...(await readPieces(from, gallery, slip, on)),
    roundTaxBy: gallery.roundTaxBy,
    terms: collectorId === null ? null : await readTradeTerms(from, collectorId),
    referrer: await readReferrer(from, content.referredById),
    certificate: await certificateOf(from, collectorId, tax.state, on),
    staffPercent: gallery.staffDiscountPercent,
    mayGoBeyond: await readWhoMayGoBeyond(from, doer, content),
    papers: await readPapers(from, content, on),
  };
  return { facts, place, taxPlaceId };
}

/** What is carried off at a fair is taxed there from the first piece on, registered or not. */
async function readTaxOf(
  from: Prisma.TransactionClient,
  { taxPlaceId, place, on }: { taxPlaceId: string; place: SellingPlace; on: CounterFacts['on'] },
): Promise<TaxSetting> {
  const tax = await readTaxSetting(from, { taxPlaceId, on });
  const isFairs = place.fairId !== null && taxPlaceId === place.taxPlaceId;
  return isFairs ? { ...tax, isRegistered: true } : tax;
}

async function readPieces(
  from: Prisma.TransactionClient,
  { lengthUnit }: Gallery,
  { content, placeId }: SlipToLookAt,
  on: CounterFacts['on'],
): Promise<Pick<CounterFacts, 'pieces' | 'sets' | 'numbers' | 'holds'>> {
  const setIds = content.lines.flatMap((line) => (line.kind === 'set' ? [line.setId] : []));
  const single = content.lines.flatMap((line) => (line.kind === 'piece' ? [line.skuId] : []));
  if (setIds.length + single.length === 0) {
    return { pieces: new Map(), sets: [], numbers: new Map(), holds: [] };
  }
  const named = setIds.length > 0 ? await readSetsById(from, setIds) : [];
  const sets = distinct([...named, ...(await readSetsOf(from, single))]);
  const members = named.flatMap((set) => set.members.map(({ skuId }) => skuId));
  const skuIds = [...new Set([...single, ...members])];
  return {
    sets,
    pieces: await readPiecesForSale(from, skuIds, { placeId, on, lengthUnit }),
    numbers: await readNumbersAt(from, { skuIds, placeId }),
    holds: await readHolds(from, { skuIds, placeId }),
  };
}

function distinct(sets: readonly KeptSet[]): KeptSet[] {
  return [...new Map(sets.map((set) => [set.setId, set])).values()];
}

async function readReferrer(
  from: Prisma.TransactionClient,
  referredById: string | null,
): Promise<CounterFacts['referrer']> {
  if (referredById === null) return null;
  const living = await livingId(from, referredById);
  if (living === null) return null;
  const known = await from.collector.findUnique({
    where: { id: living },
    select: { id: true, name: true },
  });
  return known && { ...known, terms: await readTradeTerms(from, known.id) };
}

async function certificateOf(
  from: Prisma.TransactionClient,
  collectorId: string | null,
  state: string,
  on: CounterFacts['on'],
): Promise<CertificateStanding> {
  if (collectorId === null) return { kind: 'none' };
  return readCertificateFor(from, { collectorId, state, on });
}

async function readWhoMayGoBeyond(
  from: Prisma.TransactionClient,
  { actor }: Doer,
  content: SlipContent,
): Promise<ReadonlySet<string>> {
  const may = (roles: Parameters<typeof isAllowed>[0]) =>
    isAllowed(roles, 'counter.discount_beyond');
  const discounts = [content.discount, ...content.lines.map((line) => line.discount)];
  const others = discounts
    .flatMap((discount) => (discount ? [discount.givenById] : []))
    .filter((id) => id !== actor.id);
  const staff =
    others.length === 0
      ? []
      : await from.staff.findMany({
          where: { id: { in: others } },
          select: { id: true, roles: true },
        });
  return new Set([actor, ...staff].filter(({ roles }) => may(roles)).map(({ id }) => id));
}
