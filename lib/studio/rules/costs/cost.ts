import { shareCents, type Cents } from '@/lib/money/rules';
import { divideRounded, parseDecimal } from '@/lib/money/rules/decimal';
import { apportion } from '@/lib/money/rules/split';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { dividedBy, fractionOf, none, one, plus, times, type Fraction } from './fraction';

/** What is spent on a piece, in the order in which it is told. */
export const spendings = ['clay', 'glaze', 'hands', 'firing', 'mould'] as const;
/** One of {@link spendings}. */
export type Spending = (typeof spendings)[number];

/** What is spent on one piece at a step, and what the step loses. */
export type CostStep = {
  readonly name: string;
  /** Hands, in minutes: a decimal string. */
  readonly minutesEach: string;
  /** In percent: a decimal string, '0' to below '100'. */
  readonly lossPercent: string;
  /** In exact cents, for one piece. */
  readonly clay?: Fraction;
  readonly glaze?: Fraction;
  readonly firing?: Fraction;
  readonly mould?: Fraction;
};

/** What a piece is reckoned from. */
export type CostFacts = {
  readonly steps: readonly CostStep[];
  /** What an hour of hands is reckoned at. */
  readonly centsPerHour: Cents;
  /** On top of everything: a decimal string in percent. */
  readonly overheadPercent: string;
};

/** What one good piece costs; the lines come to `totalCents` to the cent. */
export type UnitCost = {
  readonly lines: readonly {
    readonly what: Spending | 'losses' | 'overhead';
    readonly cents: Cents;
  }[];
  readonly totalCents: Cents;
  /** Hands for one piece, and with the share of those that are lost, in hundredths of a minute. */
  readonly minuteHundredths: number;
  readonly borneMinuteHundredths: number;
  /** How many of a hundred that are begun come out good, in hundredths: 8_800 for 88. */
  readonly goodHundredths: number;
};

/** Why it was not worked out what a piece costs. */
export type CostRefusal =
  | { code: 'no_steps' }
  | { code: 'minutes_out_of_range'; step: string }
  | { code: 'loss_out_of_range'; step: string }
  | { code: 'overhead_out_of_range' }
  | { code: 'nothing_known' };

/** Says in a full sentence why it was not worked out what a piece costs. */
export function costRefusalMessage(refusal: CostRefusal): string {
  switch (refusal.code) {
    case 'no_steps':
      return 'Its way through the studio has no steps yet. Write its route down first.';
    case 'minutes_out_of_range':
      return `Write for ${refusal.step} how many minutes hands are at one piece, such as 12.5.`;
    case 'loss_out_of_range':
      return `At ${refusal.step} from 0 to less than 100 of a hundred are lost.`;
    case 'overhead_out_of_range':
      return 'Write the overhead in percent, from 0 to 1,000.';
    case 'nothing_known':
      return 'Nothing is known yet that it could be reckoned from: the hour, the clay, the glaze or a firing.';
  }
}

type StepRead = { readonly left: Fraction; readonly minutes: Fraction };

/**
 * What one good piece costs.
 *
 * What is spent at a step is borne by the pieces that come through that step and all later ones, so
 * it is divided by their share: a piece that cracks in the last kiln has cost all that was put into
 * it. Overhead comes on top. Nothing is rounded before the end.
 *
 * @returns cents, half up, in lines that add up (largest remainder): what goes into one piece, then
 *   what the lost ones cost it, then overhead; refuses, in this order: no steps, minutes or a loss
 *   out of range by step, an overhead out of range, nothing known at all
 * @source common practice: clay and glaze by weight and face, hours × rate, share of the firing,
 *   losses spread over the good ones, overhead
 * @example 17.11 spent before a loss of 12 in 100, and 20 percent of overhead // 2_333n: $23.33
 */
export function costOfOne(facts: CostFacts): Result<UnitCost, CostRefusal> {
  const { steps, centsPerHour, overheadPercent } = facts;
  if (steps.length === 0) return refuse({ code: 'no_steps' });
  const read: StepRead[] = [];
  for (const step of steps) {
    const each = readStep(step);
    if (!each.ok) return each;
    read.push(each.value);
  }
  const overhead = parseDecimal(overheadPercent);
  if (!overhead || overhead.units < 0n || overhead.units > 1_000n * 10n ** BigInt(overhead.scale)) {
    return refuse({ code: 'overhead_out_of_range' });
  }
  const sums = addUp(steps, read, { over: centsPerHour, under: 60n });
  if (sums.borne.over === 0n) return refuse({ code: 'nothing_known' });
  const onTop = times(sums.borne, times(fractionOf(overhead), { over: 1n, under: 100n }));
  const good = read.reduce((share, { left }) => times(share, left), one);
  return ok({
    ...told(sums.bare, sums.borne, onTop),
    minuteHundredths: hundredths(sums.minutes),
    borneMinuteHundredths: hundredths(sums.borneMinutes),
    goodHundredths: hundredths(times(good, { over: 100n, under: 1n })),
  });
}

/** What goes into one piece, and what of it the pieces that come through have to bear. */
function addUp(steps: readonly CostStep[], read: readonly StepRead[], perMinute: Fraction) {
  const bare = new Map<Spending, Fraction>();
  let borne = none;
  let minutes = none;
  let borneMinutes = none;
  for (const [at, step] of steps.entries()) {
    const through = read.slice(at).reduce((share, { left }) => times(share, left), one);
    const hands = read[at]?.minutes ?? none;
    minutes = plus(minutes, hands);
    borneMinutes = plus(borneMinutes, dividedBy(hands, through));
    for (const what of spendings) {
      const spent = what === 'hands' ? times(hands, perMinute) : (step[what] ?? none);
      bare.set(what, plus(bare.get(what) ?? none, spent));
      borne = plus(borne, dividedBy(spent, through));
    }
  }
  return { bare, borne, minutes, borneMinutes };
}

function readStep(step: CostStep): Result<StepRead, CostRefusal> {
  const minutes = parseDecimal(step.minutesEach);
  if (!minutes || minutes.units < 0n)
    return refuse({ code: 'minutes_out_of_range', step: step.name });
  const loss = parseDecimal(step.lossPercent);
  const hundred = loss && 100n * 10n ** BigInt(loss.scale);
  if (!loss || !hundred || loss.units < 0n || loss.units >= hundred) {
    return refuse({ code: 'loss_out_of_range', step: step.name });
  }
  return ok({
    left: { over: hundred - loss.units, under: hundred },
    minutes: fractionOf(minutes),
  });
}

function hundredths({ over, under }: Fraction): number {
  return Number(divideRounded(over * 100n, under, 'half-up'));
}

function told(bare: ReadonlyMap<Spending, Fraction>, borne: Fraction, onTop: Fraction) {
  const spent = spendings.map((what) => ({ what, cents: bare.get(what) ?? none }));
  const together = spent.reduce((sum, { cents }) => plus(sum, cents), none);
  const lost = plus(borne, { over: -together.over, under: together.under });
  const exact = [
    ...spent,
    { what: 'losses' as const, cents: lost },
    { what: 'overhead' as const, cents: onTop },
  ];
  const all = plus(borne, onTop);
  const totalCents = divideRounded(all.over, all.under, 'half-up');
  const under = exact.reduce((product, { cents }) => product * cents.under, 1n);
  const quotas = exact.map(({ cents }) => cents.over * (under / cents.under));
  const { parts } = apportion(totalCents, quotas, under);
  return { totalCents, lines: exact.map(({ what }, at) => ({ what, cents: parts[at] ?? 0n })) };
}

/** What is left of a price when a piece has been paid for; below zero it costs more than it brings. */
export type Left = { readonly cents: Cents; readonly percent: number };

/**
 * What a price leaves over the cost.
 *
 * @param priceCents above zero
 * @returns the percent of the price, whole, half up
 * @example leftOf(5_200n, 2_333n) // { cents: 2_867n, percent: 55 }
 */
export function leftOf(priceCents: Cents, costCents: Cents): Left {
  const cents = priceCents - costCents;
  const percent = Number(divideRounded(cents * 100n, priceCents > 0n ? priceCents : 1n, 'half-up'));
  return { cents, percent };
}

/** A way in which a piece is sold, and what is left of its price there. */
export type Channel = { readonly name: string; readonly netCents: Cents; readonly left: Left };

/**
 * What a piece leaves by each way of selling it, at one price.
 *
 * @source common practice: shops pay half of the price, other galleries keep half, a designer gets
 *   15 percent off
 */
export function channelsAt(priceCents: Cents, costCents: Cents): Channel[] {
  const ways = [
    { name: 'At the counter', percent: '100' },
    { name: 'To a designer, 15% off', percent: '85' },
    { name: 'To a shop, at half', percent: '50' },
    { name: 'From another gallery, at half', percent: '50' },
  ];
  return ways.map(({ name, percent }) => {
    const netCents = shareCents(priceCents, percent, 'half-up');
    return { name, netCents, left: leftOf(netCents, costCents) };
  });
}

/** Prices that a cost commonly leads to. */
export type CommonPrices = { readonly wholesaleCents: Cents; readonly retailCents: Cents };

/**
 * Wholesale at about twice the cost and retail at about twice wholesale, to hold a price against.
 *
 * @source common practice of small studios; what a piece brings is the gallery's own judgement
 */
export function commonPrices(costCents: Cents): CommonPrices {
  return { wholesaleCents: costCents * 2n, retailCents: costCents * 4n };
}
