import type { PieceKind } from '@/lib/catalogue/rules';
import { formatCents, type Cents } from '@/lib/money/rules';
import {
  demandInLead,
  sellingRate,
  smallestCovering,
  type SellingRate,
} from '@/lib/stock/rules/demand';
import { expectedLost } from '@/lib/stock/rules/lost-sales';
import { reorderPoint, startCount } from '@/lib/stock/rules/reorder';
import { techniqueWords, type StepDays, type Technique } from '@/lib/studio/rules/routes';

/** How often nobody is to go home without one while a new lot is made. */
export const makeNextLevel = 0.9;
/** How sure it is to be that enough of what is begun comes out whole. */
export const makeNextCertainty = 0.9;
/** A lot is to last so many days beyond its own making, so that it is worth its kiln. */
export const lotLastsDays = 30;
/** How far back sales are looked at, in days. */
export const lookedBackDays = 365;

/**
 * What is lost at each stage, from clay through drying and the kilns to sorting, as shares.
 *
 * @source common practice; starting values that a studio replaces by its own
 */
export const usualLosses: Readonly<Record<Technique, readonly number[]>> = {
  press_moulded: [0.04, 0.04, 0.015, 0.045],
  slip_cast: [0.12, 0.04, 0.02, 0.07],
  thrown: [0.06, 0.06, 0.03, 0.08],
  slab_relief: [0.05, 0.08, 0.03, 0.07],
};

/** How a kind is commonly made, where no job of the piece says so. */
export const usualTechnique: Readonly<Record<PieceKind, Technique>> = {
  relief_tile: 'press_moulded',
  plaque: 'press_moulded',
  wall_panel: 'slab_relief',
  lamp: 'slip_cast',
  platter: 'thrown',
  planter: 'thrown',
  bowl: 'thrown',
};

/** How long a lot takes, in days, and how far that may be off. */
export type Lead = { days: number; sdDays: number };

/**
 * How long a route takes: each step by its shortest, likely and longest days.
 *
 * @source PERT: mean (a + 4m + b) ÷ 6, deviation (b − a) ÷ 6; deviations add by their squares
 * @example a route without steps // 0 days, never off
 */
export function leadOf(steps: readonly StepDays[]): Lead {
  const mean = steps.reduce(
    (sum, { shortestDays, likelyDays, longestDays }) =>
      sum + (shortestDays + 4 * likelyDays + longestDays) / 6,
    0,
  );
  const variance = steps.reduce(
    (sum, { shortestDays, longestDays }) => sum + ((longestDays - shortestDays) / 6) ** 2,
    0,
  );
  return { days: mean, sdDays: Math.sqrt(variance) };
}

/** What is known of a SKU that could be made again; all but the money in pieces. */
export type SkuToMake = {
  kind: PieceKind;
  technique: Technique;
  priceCents: Cents;
  here: number;
  /** In the gallery's other places; other galleries and homes do not count. */
  elsewhere: number;
  /** Held for somebody, in all of these places. */
  held: number;
  /** Ordered by collectors and shops, and not held yet. */
  ordered: number;
  inMaking: number;
  /** Sold in the days looked at, less what was brought back. */
  sold: number;
  daysOnOffer: number;
  /** How many of an edition may still be made; null for open stock. */
  editionLeft: number | null;
};

/** What to do about a SKU, and why. */
export type MakeNext = {
  /** What is there and comes, less what is promised; may be below zero. */
  free: number;
  rate: SellingRate;
  lead: Lead;
  reorderPoint: number;
  /** How many whole ones are wanted; none while enough are free. */
  wanted: number;
  /** How many to begin with, so that they come out. */
  start: number;
  /** Visitors who would go home without one before a lot begun today is ready. */
  lost: number;
  lostCents: Cents;
  working: readonly string[];
};

/**
 * What to make of a SKU: nothing while more are free than the reorder point, and otherwise as
 * many as make the shelf last through the making and a month beyond.
 *
 * @param kindPerDay how many a day one SKU of the kind sells
 * @param steps of the route it is made by
 * @source common practice: a reorder point with a level to fill up to, spare ones for the losses
 * @example an edition of which all are made // wanted 0
 */
export function makeNext(sku: SkuToMake, kindPerDay: number, steps: readonly StepDays[]): MakeNext {
  const rate = sellingRate({ sold: sku.sold, daysOnOffer: sku.daysOnOffer, kindPerDay });
  const lead = leadOf(steps);
  const asked = { perDay: rate.perDay, leadDays: lead.days, leadSdDays: lead.sdDays };
  const { reorderPoint: point } = reorderPoint({ ...asked, serviceLevel: makeNextLevel });
  const longer = demandInLead({ ...asked, leadDays: lead.days + lotLastsDays });
  const target = smallestCovering(longer, makeNextLevel);
  const free = sku.here + sku.elsewhere + sku.inMaking - sku.held - sku.ordered;
  const short = free <= point ? Math.max(0, target - free) : 0;
  const wanted = Math.max(0, Math.min(short, sku.editionLeft ?? short));
  const stepLosses = usualLosses[sku.technique];
  const { start } = startCount({ good: wanted, stepLosses, certainty: makeNextCertainty });
  const lost = expectedLost(demandInLead(asked), free);
  const lostCents = (sku.priceCents * BigInt(Math.round(lost * 1_000))) / 1_000n;
  const result = { free, rate, lead, reorderPoint: point, wanted, start, lost, lostCents };
  return { ...result, working: workingOf(sku, { ...result, target, kindPerDay }) };
}

type Reckoned = Omit<MakeNext, 'working'> & { target: number; kindPerDay: number };

function workingOf(sku: SkuToMake, reckoned: Reckoned): string[] {
  const { free, rate, lead, target, wanted, start, lost, lostCents } = reckoned;
  const { here, elsewhere, inMaking, held, ordered, editionLeft } = sku;
  const whole = Math.round((wanted === 0 ? 1 : wanted / start) * 100);
  return [
    `${sku.sold} sold on ${sku.daysOnOffer} days on which there was one; a piece of its kind sells ${aMonth(reckoned.kindPerDay)} a month.`,
    `Drawn together that is ${aMonth(rate.perDay)} a month, give or take ${aMonth(rate.sdPerDay)}; ${Math.round(rate.ownShare * 100)}% of it is its own history.`,
    `A lot, ${techniqueWords[sku.technique]}, takes ${Math.round(lead.days)} days, give or take ${Math.round(lead.sdDays)}.`,
    `Free: ${here} here + ${elsewhere} elsewhere + ${inMaking} in the making − ${held} held − ${ordered} ordered is ${free}.`,
    `A lot is begun at ${reckoned.reorderPoint} or fewer, and fills up to ${target}, in nine of ten cases enough for its making and ${lotLastsDays} days more.`,
    ...(editionLeft === null ? [] : [`Of the edition ${editionLeft} may still be made.`]),
    ...(wanted === 0
      ? []
      : [
          `To have ${wanted} whole in nine of ten cases, begin ${start}: about ${whole}% are kept.`,
        ]),
    `Until a lot begun today is ready, ${inTenths.format(lost)} sales would be lost, ${formatCents(lostCents)}.`,
  ];
}

/** Pieces a day as pieces a month, in words: one place, and two below one tenth. */
export function aMonth(perDay: number): string {
  const month = perDay * 30;
  return (month > 0 && month < 0.1 ? inHundredths : inTenths).format(month);
}

const inTenths = placesOf(1);
const inHundredths = placesOf(2);

function placesOf(digits: number): Intl.NumberFormat {
  return new Intl.NumberFormat('en-US', {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
}

/** What the reckoning does, in one sentence. */
export const makeNextFormula =
  'Sales over the days on which there was one, drawn towards how the kind sells; a reorder point ' +
  'for the days that making takes; enough to last a month beyond; spare ones for what is lost.';
/** Where it comes from. */
export const makeNextSource =
  'Common practice for slow sellers: Poisson demand, a gamma lead time, binomial losses';
/** What to mind. */
export const makeNextCaution =
  'It knows the last year and no season ahead: what is to hang in December is begun by October. ' +
  'Losses are starting values until the studio has counted its own.';
