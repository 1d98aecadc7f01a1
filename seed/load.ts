import { dayFromDate, dayOf, dayStartAt } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok } from '@/lib/platform/result';
import { readPiecesForSale } from '@/lib/sales/reads';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { bringIntoStock } from '@/lib/stock/writes';
import { drawPieces, fillCatalogue } from './catalogue';
import { tradeChance } from './chance';
import { addCollectors } from './collectors';
import { fillCards } from './collectors-cards';
import { playCommissions } from './commissions';
import { playWhatGoesOn } from './commissions/later';
import { playDelivery } from './delivery';
import { playGlazes } from './glazes';
import { gallery } from './scenario/gallery';
import { beginningOf, setUpGallery, type SetUp } from './set-up';
import { playCatalogueAndOrders } from './counter/catalogue-and-orders';
import { playDrawer } from './counter/drawer';
import { playFairs } from './counter/fairs';
import { keepForPeople } from './counter/holds';
import { playReturns } from './counter/returns';
import { playShops } from './counter/shops';
import { playStockroom } from './counter/stockroom';
import { loadTax } from './counter/tax';
import { openStockJobs } from './studio';
import { keepStudio } from './studio/kilns';
import { playPastJobs } from './studio/past';
import { playThisWeek } from './studio/this-week';
import { playTrade, type Rate, type TradeMonth } from './trade';

/** The one number from which the demo's chances come. */
const demoSeed = 20_417;

/**
 * Fills an empty, migrated database with the demo gallery: two years of trade and a commission in
 * each state, played through the product's own rules and writes, in days counted back from today.
 *
 * @param report is told what is being done, in one short sentence at a time
 * @throws Error when something is there already, or a write refuses what the scenario asks
 */
export async function loadDemoGallery(report: (sentence: string) => void): Promise<void> {
  invariant((await db().staff.count()) === 0, 'The demo is loaded into an empty gallery.');
  const today = dayOf(now(), gallery.timeZone);
  const begunAt = dayStartAt(beginningOf(today), gallery.timeZone);

  report('Carving and glazing the pictures of the pieces');
  const drawn = await drawPieces();

  report('Hanging the gallery');
  const { setUp, skus, collectors } = await whole(async (tx) => {
    const made = await setUpGallery(tx, today);
    const doer = { actor: made.owner, at: begunAt };
    return {
      setUp: made,
      skus: await fillCatalogue(tx, drawn, begunAt),
      collectors: await addCollectors(tx, doer),
    };
  });

  report('Playing two years at the counter');
  const ids = skus.map((sku) => sku.id);
  const months = playTrade({
    ...{ today, timeZone: gallery.timeZone, setUp, skus },
    pieces: await readPiecesForSale(db(), ids, {
      placeId: setUp.floorId,
      on: today,
      lengthUnit: 'in',
    }),
    rates: await ratesOf(setUp.taxPlaceId),
    collectorIds: [...collectors.values()],
    chance: tradeChance(demoSeed),
  });
  for (const month of months) await whole((tx) => writeMonth(tx, setUp, month));

  report('Firing the kilns of the last months');
  const [kilnId = '', smallKilnId = ''] = await keepStudio({ today, setUp });
  await playPastJobs({ today, setUp }, kilnId);

  report('Taking the commissions from the request to the wall');
  await playCommissions({ today, setUp, collectors });
  await playWhatGoesOn({ today, setUp });
  await openStockJobs({ today, setUp, skus });
  await playGlazes({ today, setUp });
  await playThisWeek({ today, setUp }, { kilnId, smallKilnId });
  await playCounter({ today, setUp, skus, collectors }, report);

  report('Packing what goes out, and keeping the diary');
  await playDelivery({ today, setUp });
}

/** What the counter and the stock room do besides selling; the drawer is counted after it all. */
async function playCounter(
  demo: Parameters<typeof loadTax>[0] & Parameters<typeof playCatalogueAndOrders>[0],
  report: (sentence: string) => void,
): Promise<void> {
  report('Keeping back, taking back, counting and carrying to the fair');
  await loadTax(demo);
  await playStockroom(demo);
  await keepForPeople(demo);
  await playCatalogueAndOrders(demo);
  await playReturns(demo);
  await playFairs(demo);
  await playShops(demo);
  await playDrawer(demo);
  await fillCards(demo);
}

async function writeMonth(tx: Tx, setUp: SetUp, month: TradeMonth): Promise<void> {
  const { arrivals, sales } = month;
  const first = arrivals[0]?.at ?? sales[0]?.soldAt;
  if (!first) return;
  await bringIntoStock(tx, { actor: setUp.maker, at: first }, arrivals);
  if (sales.length === 0) return;
  await recordSales(tx, { actor: setUp.seller, at: first }, sales);
}

async function ratesOf(placeId: string): Promise<Rate[]> {
  const rows = await db().taxRate.findMany({ where: { placeId }, orderBy: { fromOn: 'asc' } });
  return rows.map((row) => ({
    name: row.authority,
    ratePercent: row.ratePercent.toString(),
    fromOn: dayFromDate(row.fromOn),
    untilOn: row.untilOn && dayFromDate(row.untilOn),
  }));
}

async function whole<Value>(work: (tx: Tx) => Promise<Value>): Promise<Value> {
  const done = await inTransaction<Value, never>(async (tx) => ok(await work(tx)), {
    timeoutMs: 120_000,
  });
  invariant(done.ok, 'The demo is not refused.');
  return done.value;
}
