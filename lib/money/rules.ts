import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { alignDecimals, divideRounded, parseDecimal, type Rounding } from './rules/decimal';
import { apportion, type SplitSteps } from './rules/split';

/** Money: a whole number of cents, never a float. */
export type Cents = bigint;

/** The largest amount a person may type: 9,999,999,999.99. */
export const mostCents: Cents = 999_999_999_999n;

/** Why a typed amount was not taken. */
export type MoneyRefusal =
  | { code: 'no_amount' }
  | { code: 'below_zero' }
  | { code: 'not_an_amount' }
  | { code: 'thousands_misplaced' }
  | { code: 'part_of_a_cent' }
  | { code: 'too_much'; mostCents: Cents };

/**
 * Reads an amount of money as a person types it: `1299`, `1,299.00`, `$1,299.5`.
 *
 * @returns cents; refuses, in this order: nothing typed, below zero, not an amount, commas in the
 *   wrong places, more than two decimals, more than 9,999,999,999.99
 * @example parseCents('$1,299.5') // 129950n: one decimal is tens of cents
 */
export function parseCents(text: string): Result<Cents, MoneyRefusal> {
  const typed = text.trim();
  if (typed === '' || typed === '$') return refuse({ code: 'no_amount' });
  if (/^(?:[-−–]|\$\s*[-−–]|\(.*\)$)/.test(typed)) return refuse({ code: 'below_zero' });

  const match = /^\$?\s*(\d[\d,]*|(?=\.))(?:\.(\d+))?$/.exec(typed);
  if (!match) return refuse({ code: 'not_an_amount' });
  const [, whole = '', fraction = ''] = match;
  if (whole.includes(',') && !/^\d{1,3}(?:,\d{3})+$/.test(whole)) {
    return refuse({ code: 'thousands_misplaced' });
  }
  if (fraction.length > 2) return refuse({ code: 'part_of_a_cent' });

  const cents = BigInt(whole.replaceAll(',', '') + fraction.padEnd(2, '0'));
  return cents > mostCents ? refuse({ code: 'too_much', mostCents }) : ok(cents);
}

/** Says in a full sentence why a typed amount was not taken. */
export function moneyRefusalMessage(refusal: MoneyRefusal): string {
  switch (refusal.code) {
    case 'no_amount':
      return 'Write an amount, such as 48 or 1,299.00.';
    case 'below_zero':
      return 'Write the amount without a minus.';
    case 'not_an_amount':
      return 'Write the amount in figures, such as 48 or 1,299.00.';
    case 'thousands_misplaced':
      return 'The commas are not at the thousands. Write 1,299.00 or 1299.';
    case 'part_of_a_cent':
      return 'Write at most two figures after the point: there is nothing smaller than a cent.';
    case 'too_much':
      return `The most that can be written is ${formatCents(refusal.mostCents)}.`;
  }
}

/** The currencies that can be shown; all of them have a hundred cents. */
export const currencySigns = { USD: '$', CAD: 'CA$', EUR: '€', GBP: '£' } as const;

/** A currency by its three letters of ISO 4217. */
export type Currency = keyof typeof currencySigns;

/**
 * One of ours by its ISO 4217 letters.
 *
 * @returns US dollars for letters that no sign is kept for
 */
export function currencyNamed(letters: string): Currency {
  const known = Object.keys(currencySigns) as Currency[];
  return known.find((currency) => currency === letters) ?? 'USD';
}

/**
 * An amount as it is read: `$1,299.00`, and `−$5.00` below zero.
 *
 * @example formatCents(5n) // '$0.05'
 */
export function formatCents(cents: Cents, { currency = 'USD' }: { currency?: Currency } = {}) {
  const [whole = '', fraction = ''] = plainCents(cents < 0n ? -cents : cents).split('.');
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/g, ',');
  return `${cents < 0n ? '−' : ''}${currencySigns[currency]}${grouped}.${fraction}`;
}

/**
 * An amount without sign of currency or commas, as a form field and a spreadsheet want it.
 *
 * @example plainCents(-129900n) // '-1299.00'
 */
export function plainCents(cents: Cents): string {
  const digits = (cents < 0n ? -cents : cents).toString().padStart(3, '0');
  return `${cents < 0n ? '-' : ''}${digits.slice(0, -2)}.${digits.slice(-2)}`;
}

/** Adds amounts up; nothing at all adds up to zero. */
export function sumCents(amounts: readonly Cents[]): Cents {
  return amounts.reduce((sum, cents) => sum + cents, 0n);
}

/**
 * Splits an amount by weights so that the parts add up to it exactly.
 *
 * Each part is within one cent of its exact share; cents left over go to the largest rests, the
 * earlier of two equal ones first. Below zero it mirrors. A weight of zero gets nothing.
 *
 * @param weights at least one, none below zero, not all of them zero
 * @source largest remainder; OpenStax, Contemporary Mathematics, section 11.4
 * @example splitCents(100n, [1n, 1n, 1n]) // [34n, 33n, 33n]
 */
export function splitCents(totalCents: Cents, weights: readonly bigint[]): Cents[] {
  return [...splitInSteps(totalCents, weights).parts];
}

/**
 * The same split as {@link splitCents}, with the steps that show how it was worked out.
 *
 * @example splitInSteps(100n, [1n, 1n, 1n]).missing // 1n: 33 + 33 + 33 is a cent short
 */
export function splitInSteps(totalCents: Cents, weights: readonly bigint[]): SplitSteps {
  const all = weights.reduce((sum, weight) => sum + weight, 0n);
  invariant(
    all > 0n && weights.every((weight) => weight >= 0n),
    'Money is split by weights of zero or more that are not all zero.',
  );
  const quotas = weights.map((weight) => totalCents * weight);
  return apportion(totalCents, quotas, all);
}

/**
 * Whether these percentages can share out a whole: each a decimal of zero or more, together 100.
 *
 * @example percentsAddUp(['33.3', '33.3', '33.4']) // true; three times '33.3' is not
 */
export function percentsAddUp(percents: readonly string[]): boolean {
  const read = percents.map((percent) => parseDecimal(percent)).filter((each) => each !== null);
  if (read.length < percents.length || read.some((each) => each.units < 0n)) return false;
  const { units, scale } = alignDecimals(read);
  return units.reduce((sum, each) => sum + each, 0n) === 100n * 10n ** BigInt(scale);
}

/**
 * Splits an amount into instalments by percentages; they add up to it exactly.
 *
 * @param percents decimal strings for which {@link percentsAddUp} holds
 * @example splitByPercents(123_457n, ['50', '25', '25']) // [61_729n, 30_864n, 30_864n]
 */
export function splitByPercents(cents: Cents, percents: readonly string[]): Cents[] {
  return splitCents(cents, percentWeights(percents));
}

/**
 * Percentages as weights for a split: whole numbers in the same proportion.
 *
 * @param percents decimal strings for which {@link percentsAddUp} holds
 * @example percentWeights(['33.3', '66.7']) // [333n, 667n]
 */
export function percentWeights(percents: readonly string[]): bigint[] {
  invariant(percentsAddUp(percents), 'The percentages of a split add up to 100.');
  return alignDecimals(percents.map(decimalOf)).units;
}

/**
 * A percentage of an amount, rounded once, exactly. Below zero it mirrors.
 *
 * @param percent decimal string, `'8.375'`; it may be above 100
 * @example shareCents(10_001n, '50', 'up') // 5_001n; 5_000n rounded down
 */
export function shareCents(cents: Cents, percent: string, rounding: Rounding): Cents {
  const { units, scale } = decimalOf(percent);
  return divideRounded(cents * units, 100n * 10n ** BigInt(scale), rounding);
}

function decimalOf(percent: string) {
  const decimal = parseDecimal(percent);
  invariant(decimal, 'A percentage is a decimal such as 8.375.');
  return decimal;
}
