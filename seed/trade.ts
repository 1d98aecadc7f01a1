import type { Actor } from '@/lib/access/rules';
import {
  addDays,
  instantOf,
  monthOf,
  monthRange,
  nextMonth,
  weekdayOf,
  type Day,
  type Month,
} from '@/lib/dates/rules';
import { ratesOn, type TaxPart } from '@/lib/tax/rules';
import { pieceLine, type PieceForSale } from '@/lib/sales/rules';
import { priceSlip } from '@/lib/sales/rules/pricing';
import type { SaleToRecord } from '@/lib/sales/writes/record-sales';
import type { Arrival } from '@/lib/stock/writes';
import type { TradeChance } from './chance';
import type { DemoSku } from './catalogue';
import { beginningOf, type SetUp } from './set-up';

/** What happened in one month: what the studio brought in first, and then what was sold. */
export type TradeMonth = { month: Month; arrivals: Arrival[]; sales: SaleToRecord[] };

export type Rate = TaxPart & { fromOn: Day; untilOn: Day | null };

/** What the trade is played with. */
export type Trade = {
  today: Day;
  timeZone: string;
  setUp: SetUp;
  skus: readonly DemoSku[];
  pieces: ReadonlyMap<string, PieceForSale>;
  rates: readonly Rate[];
  collectorIds: readonly string[];
  chance: TradeChance;
};

/** How busy each month of the year is: summer visitors, and gifts in December. */
const season = [0.55, 0.6, 0.8, 0.9, 1, 1.25, 1.55, 1.5, 1.05, 0.9, 1.1, 1.75];
const salesInAMonth = 96;

/**
 * Plays two years of trade: each month the studio fills the shelves, and visitors take from them
 * what is there. The newest month stops today.
 */
export function playTrade(trade: Trade): TradeMonth[] {
  const shelf = new Map<string, number>();
  const months: TradeMonth[] = [];
  const last = monthOf(trade.today);
  for (let month = monthOf(beginningOf(trade.today)); month <= last; month = nextMonth(month)) {
    const days = openDays(trade, month);
    const arrivals = fillShelves(trade, shelf, month, days[0] ?? trade.today);
    const sales = sellMonth(trade, shelf, month, days);
    months.push({ month, arrivals, sales });
  }
  return months;
}

/** The gallery is closed on Tuesdays. */
function openDays({ today }: Trade, month: Month): Day[] {
  const { fromOn, untilOn } = monthRange(month);
  const begun = beginningOf(today);
  const days: Day[] = [];
  for (let day = fromOn; day < untilOn && day < today; day = addDays(day, 1)) {
    if (day >= begun && weekdayOf(day) !== 2) days.push(day);
  }
  return days;
}

function fillShelves(trade: Trade, shelf: Map<string, number>, month: Month, on: Day): Arrival[] {
  const isFirst = month === monthOf(beginningOf(trade.today));
  const at = instantOf(on, '08:30', trade.timeZone);
  const total = trade.skus.reduce((sum, sku) => sum + sku.draw, 0);
  return trade.skus.flatMap((sku) => {
    const asked = (salesInAMonth * 1.4 * seasonOf(month) * sku.draw) / total;
    const wished = sku.form === 'W' ? 1 : Math.ceil(asked * 2.2) + 3;
    // Now and then the kiln is too full for a design, and it runs out.
    const short = !isFirst && trade.chance.happens(0.1);
    const here = shelf.get(sku.id) ?? 0;
    const quantity =
      short || (sku.form === 'W' && !isFirst && trade.chance.happens(0.8)) ? 0 : wished - here;
    if (quantity <= 0) return [];
    shelf.set(sku.id, here + quantity);
    const reason = isFirst ? ('opening' as const) : ('made' as const);
    const { id: skuId, costCents: unitCostCents } = sku;
    const placeId = trade.setUp.floorId;
    return [{ skuId, placeId, quantity, reason, unitCostCents, at, staffId: trade.setUp.maker.id }];
  });
}

function sellMonth(
  trade: Trade,
  shelf: Map<string, number>,
  month: Month,
  days: readonly Day[],
): SaleToRecord[] {
  if (days.length === 0) return [];
  const share = days.length / 26;
  const wanted = Math.round(salesInAMonth * seasonOf(month) * share);
  const chosen = Array.from({ length: wanted }, () => ({
    day: trade.chance.weighted(days, (day) => ([0, 6].includes(weekdayOf(day)) ? 2 : 1)),
    minute: trade.chance.whole(0, 419),
  })).sort((a, b) => (a.day === b.day ? a.minute - b.minute : a.day < b.day ? -1 : 1));
  return chosen.flatMap(({ day, minute }) => {
    const sale = sellOnce(trade, shelf, day, minute);
    return sale ? [sale] : [];
  });
}

function sellOnce(
  trade: Trade,
  shelf: Map<string, number>,
  soldOn: Day,
  minute: number,
): SaleToRecord | null {
  const { chance, setUp, rates, timeZone } = trade;
  const lines = pickUp(trade, shelf);
  if (lines.length === 0) return null;
  const parts = ratesOn(rates, soldOn).map(({ name, ratePercent }) => ({ name, ratePercent }));
  const priced = priceSlip(lines, parts, 'invoice');
  const seller: Actor = chance.happens(0.72) ? setUp.seller : setUp.owner;
  const isKnown = chance.happens(priced.totalCents > 30_000n ? 0.6 : 0.15);
  return {
    ...priced,
    tenders: [tenderFor(priced.totalCents, chance)],
    channel: 'counter',
    placeId: setUp.floorId,
    taxPlaceId: setUp.taxPlaceId,
    collectorId: isKnown ? chance.pick(trade.collectorIds) : null,
    soldOn,
    soldAt: instantOf(soldOn, clockTime(10 * 60 + 15 + minute), timeZone),
    staffId: seller.id,
  };
}

function pickUp({ chance, skus, pieces }: Trade, shelf: Map<string, number>) {
  const count = chance.weighted([1, 2, 3, 4], (many) => [0, 62, 25, 9, 4][many] ?? 0);
  const taken = new Map<string, number>();
  for (let left = count; left > 0; left -= 1) {
    const here = skus.filter((sku) => (shelf.get(sku.id) ?? 0) > 0);
    if (here.length === 0) break;
    const sku = chance.weighted(here, (each) => each.draw);
    const most = Math.min(shelf.get(sku.id) ?? 0, sku.form === '5' && chance.happens(0.2) ? 4 : 1);
    taken.set(sku.id, (taken.get(sku.id) ?? 0) + most);
    shelf.set(sku.id, (shelf.get(sku.id) ?? 0) - most);
  }
  return [...taken].flatMap(([skuId, quantity]) => {
    const piece = pieces.get(skuId);
    return piece ? [pieceLine(piece, quantity)] : [];
  });
}

function tenderFor(totalCents: bigint, chance: TradeChance): SaleToRecord['tenders'][number] {
  if (chance.happens(totalCents < 10_000n ? 0.4 : 0.12)) {
    const note = totalCents < 10_000n ? 2_000n : 10_000n;
    const givenCents = ((totalCents + note - 1n) / note) * note;
    return { kind: 'cash', amountCents: totalCents, givenCents, reference: '' };
  }
  const reference = String(chance.whole(100_000, 999_999));
  return { kind: 'card', amountCents: totalCents, givenCents: null, reference };
}

function seasonOf(month: Month): number {
  return season[Number(month.slice(5)) - 1] ?? 1;
}

function clockTime(minutes: number): string {
  const two = (count: number): string => String(count).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
