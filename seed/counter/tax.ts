import type { Doer } from '@/lib/access/rules';
import { keepRate, keepTaxPlace, keepTaxState, keepTreatment } from '@/lib/access/writes/tax';
import { keepCertificate, setTradeTerms } from '@/lib/collectors/writes/trade';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok } from '@/lib/platform/result';
import { readPiecesForSale } from '@/lib/sales/reads';
import { pieceLine, type PieceForSale } from '@/lib/sales/rules';
import { priceSlip, type LineToPrice } from '@/lib/sales/rules/pricing';
import { recordSales, type SaleToRecord } from '@/lib/sales/writes/record-sales';
import { payReferralFee, recordReferralFee } from '@/lib/sales/writes/referral-fee';
import type { TaxStateInput } from '@/lib/tax/input';
import { readTaxSetting } from '@/lib/tax/reads';
import { taxableOf } from '@/lib/tax/rules/treatment';
import { done } from '@/seed/done';
import { gallery } from '@/seed/scenario/gallery';
import {
  broughtBy,
  certificates,
  homeTreatments,
  otherPlaces,
  sentAway,
  trade,
  unregistered,
} from '@/seed/scenario/tax';
import type { SetUp } from '@/seed/set-up';

/** What the tax and the trade of the demo stand on. */
export type TaxDemo = {
  today: Day;
  setUp: SetUp;
  skus: readonly { id: string }[];
  /** The collectors' ids by name. */
  collectors: ReadonlyMap<string, string>;
};

/** Other states, what the own one taxes, and designers with what they get and have on file. */
export async function loadTax(demo: TaxDemo): Promise<void> {
  for (const treatment of homeTreatments) {
    const { daysAgo, ...said } = treatment;
    const fromOn = addDays(demo.today, -daysAgo);
    const input = { requestKey: newId(), state: gallery.state, ...said, fromOn };
    done(await keepTreatment(ownerAt(demo, daysAgo), input));
  }
  for (const place of otherPlaces) await keepPlace(demo, place);
  await agreeWithTheTrade(demo);
  const pieces = await piecesToSell(demo);
  const sent = await sendAway(demo, pieces);
  await keepThreshold(demo, sent);
  await bringClients(demo, pieces);
}

function ownerAt({ today, setUp }: TaxDemo, daysAgo: number): Doer {
  return { actor: setUp.owner, at: instantOf(addDays(today, -daysAgo), '09:20', gallery.timeZone) };
}

async function keepPlace(demo: TaxDemo, place: (typeof otherPlaces)[number]): Promise<void> {
  const { name, state, registeredDaysAgo, rates } = place;
  const doer = ownerAt(demo, registeredDaysAgo ?? 200);
  const registeredFrom =
    registeredDaysAgo === null ? null : addDays(demo.today, -registeredDaysAgo);
  const asked = { requestKey: newId(), placeId: null, name, state, registeredFrom };
  const placeId = done(await keepTaxPlace(doer, asked));
  for (const rate of rates) {
    const fromOn = registeredFrom ?? demo.today;
    done(await keepRate(doer, { requestKey: newId(), placeId, ...rate, fromOn }));
  }
}

async function agreeWithTheTrade(demo: TaxDemo): Promise<void> {
  const { today } = demo;
  const ways = [
    { way: 'discount', ...trade.discount },
    { way: 'referral_fee', ...trade.referral },
  ] as const;
  for (const { way, name, percent, sinceDaysAgo, note } of ways) {
    const terms = { way, percent, note, sinceOn: addDays(today, -sinceDaysAgo) };
    const asked = { requestKey: newId(), collectorId: idOf(demo, name), ...terms };
    done(await setTradeTerms(ownerAt(demo, sinceDaysAgo), asked));
  }
  for (const { name, fromDaysAgo, untilInDays, ...words } of certificates) {
    const days = {
      fromOn: addDays(today, -fromDaysAgo),
      untilOn: untilInDays === null ? null : addDays(today, untilInDays),
    };
    const who = { requestKey: newId(), collectorId: idOf(demo, name), picture: undefined };
    const asked = { ...who, ...words, ...days };
    done(await keepCertificate(ownerAt(demo, fromDaysAgo), asked));
  }
}

function idOf({ collectors }: TaxDemo, name: string): string {
  const id = collectors.get(name);
  invariant(id, `${name} is in the demo's address book.`);
  return id;
}

/** The pieces of which several are here, the dearest first. */
async function piecesToSell({ today, setUp, skus }: TaxDemo): Promise<PieceForSale[]> {
  const all = await readPiecesForSale(
    db(),
    skus.map(({ id }) => id),
    { placeId: setUp.floorId, on: today, lengthUnit: gallery.lengthUnit },
  );
  const many = [...all.values()].filter(
    ({ onHand, held, making }) => onHand - held >= 2 && making === 'open_stock',
  );
  return many.toSorted((a, b) => (a.priceCents < b.priceCents ? 1 : -1));
}

/** Takes the dearest piece that stood here on that day and ever since; undefined when none did. */
async function takePiece(tx: Tx, demo: TaxDemo, from: { daysAgo: number; pieces: PieceForSale[] }) {
  const on = addDays(demo.today, -from.daysAgo);
  const found = await tx.$queryRaw<{ skuId: string }[]>`
    WITH run AS (
      SELECT "skuId", at, id,
        sum(quantity) OVER (PARTITION BY "skuId" ORDER BY at, id) AS here
      FROM "StockMovement" WHERE "placeId" = ${demo.setUp.floorId}::uuid)
    SELECT "skuId" FROM run GROUP BY "skuId"
    HAVING (array_agg(here ORDER BY at DESC, id DESC) FILTER (WHERE at < ${on}::date))[1] > 0
      AND coalesce(min(here) FILTER (WHERE at >= ${on}::date), 1) > 0`;
  const stood = new Set(found.map(({ skuId }) => skuId));
  const at = from.pieces.findIndex(({ skuId }) => stood.has(skuId));
  return at < 0 ? undefined : from.pieces.splice(at, 1)[0];
}

type Sale = Pick<SaleToRecord, 'channel' | 'taxPlaceId' | 'collectorId'> & {
  daysAgo: number;
  lines: LineToPrice[];
} & Partial<Pick<SaleToRecord, 'delivery' | 'deliverTo' | 'referredById'>>;

async function sell(tx: Tx, { today, setUp }: TaxDemo, sale: Sale) {
  const { daysAgo, lines, ...how } = sale;
  const soldOn = addDays(today, -daysAgo);
  const setting = await readTaxSetting(tx, { taxPlaceId: how.taxPlaceId, on: soldOn });
  const asked = lines.map(({ unitPriceCents: cents, taxKind: kind = 'goods' }) => ({
    ...{ cents, kind, weightG: null, isSeparate: true },
  }));
  const { perLine, exemptWhy } = taxableOf(asked, setting, null);
  const taxed = lines.map((line, at) => {
    const taxableCents = perLine[at]?.taxableCents ?? 0n;
    return { ...line, taxableCents, taxable: taxableCents > 0n };
  });
  const priced = priceSlip(taxed, exemptWhy === '' ? setting.parts : [], gallery.roundTaxBy);
  const amountCents = priced.totalCents;
  const tender = { kind: 'card' as const, amountCents, givenCents: null, reference: '' };
  const soldAt = instantOf(soldOn, '15:40', gallery.timeZone);
  const [sold] = await recordSales(tx, { actor: setUp.seller, at: soldAt }, [
    { ...priced, ...how, tenders: [tender], placeId: setUp.floorId, soldOn, exemptWhy },
  ]);
  invariant(sold, 'What is sold is recorded.');
  return { ...sold, soldOn, soldAt, netCents: priced.netCents };
}

/** @returns what was sent to the state without registration, in cents before tax */
async function sendAway(demo: TaxDemo, pieces: PieceForSale[]): Promise<Cents> {
  const place = await db().taxPlace.findFirst({
    where: { state: unregistered.state },
    select: { id: true },
  });
  invariant(place, 'The place that pieces are sent to is kept.');
  const sent = await whole((tx) =>
    inTurn(sentAway, async ({ daysAgo, to: deliverTo, freightCents }) => {
      const piece = await takePiece(tx, demo, { daysAgo, pieces });
      if (!piece) return 0n;
      const lines = [pieceLine(piece, 1), freight(freightCents)];
      const how = { channel: 'shipped', delivery: 'sent', collectorId: null } as const;
      const sale = { ...how, lines, daysAgo, deliverTo, taxPlaceId: place.id };
      return (await sell(tx, demo, sale)).netCents;
    }),
  );
  return sumCents(sent);
}

function freight(unitPriceCents: Cents): LineToPrice {
  return {
    ...{ kind: 'shipping', skuId: null, designId: null, title: 'Delivery', what: 'by carrier' },
    ...{ quantity: 1, unitPriceCents, taxable: true, taxKind: 'shipping', unitCostCents: null },
  };
}

/** The invented threshold lies a little above what was sent, so that the page has to warn. */
async function keepThreshold(demo: TaxDemo, sentCents: Cents): Promise<void> {
  if (sentCents === 0n) return;
  const step = 10_000n;
  const thresholdCents = ((sentCents * 100n) / 88n / step + 1n) * step;
  const asked: TaxStateInput = {
    ...{ requestKey: newId(), ...unregistered, registeredFrom: null, thresholdCents },
    ...{ thresholdSales: null, needs: 'either' as const, window: 'twelve_months' as const },
    lookedUpOn: addDays(demo.today, -45),
  };
  done(await keepTaxState(ownerAt(demo, 45), asked));
}

async function bringClients(demo: TaxDemo, pieces: PieceForSale[]): Promise<void> {
  const collectorId = idOf(demo, trade.referral.name);
  const { percent } = trade.referral;
  const receipts = await whole((tx) =>
    inTurn(broughtBy, async ({ daysAgo, buyer }) => {
      const piece = await takePiece(tx, demo, { daysAgo, pieces });
      if (!piece) return null;
      const { setUp } = demo;
      const sale = { taxPlaceId: setUp.taxPlaceId, collectorId: idOf(demo, buyer), daysAgo };
      const lines = [pieceLine(piece, 1)];
      const sold = await sell(tx, demo, {
        ...{ ...sale, lines, channel: 'counter', referredById: collectorId },
      });
      const { saleId, number: saleNumber, netCents, soldOn: on, soldAt } = sold;
      const fee = { saleId, saleNumber, collectorId, percent, netCents, on };
      await recordReferralFee(tx, { actor: setUp.seller, at: soldAt }, fee);
      return saleId;
    }),
  );
  const paid = receipts.filter((_, at) => broughtBy[at]?.isPaid).filter((id) => id !== null);
  const fees = await db().referralFee.findMany({
    where: { saleId: { in: paid } },
    select: { id: true },
    orderBy: { id: 'asc' },
  });
  if (fees.length === 0) return;
  const paidOn = addDays(demo.today, -30);
  const feeIds = fees.map(({ id }) => id);
  const asked = { requestKey: newId(), collectorId, feeIds, how: 'bank_transfer', paidOn } as const;
  done(await payReferralFee(ownerAt(demo, 30), asked));
}

async function inTurn<One, Made>(
  all: readonly One[],
  work: (one: One) => Promise<Made>,
): Promise<Made[]> {
  const made: Made[] = [];
  for (const one of all) made.push(await work(one));
  return made;
}

async function whole<Value>(work: (tx: Tx) => Promise<Value>): Promise<Value> {
  return done(await inTransaction<Value, never>(async (tx) => ok(await work(tx))));
}
