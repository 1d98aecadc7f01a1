import { invariant } from '@/lib/platform/invariant';
import type { Day } from '@/lib/dates/rules';
import { currencySigns, splitCents, sumCents, type Cents } from '@/lib/money/rules';
import {
  alignDecimals,
  divideRounded,
  formatDecimal,
  parseDecimal,
} from '@/lib/money/rules/decimal';
import { apportion } from '@/lib/money/rules/split';

/** One line of a sale: its price after discounts, in cents, and whether tax is due on it. */
export type TaxLine = { readonly cents: Cents; readonly taxable: boolean };

/** What a line is for the tax: `none` is money that is no sale yet. */
export type TaxKind = 'goods' | 'shipping' | 'installation' | 'design_work' | 'none';

/** One authority's rate: the state's, the county's, the city's. */
export type TaxPart = { readonly name: string; readonly ratePercent: string };

/** Whether the cents are rounded once for the whole sale, or line by line. */
export type RoundBy = 'invoice' | 'item';

/** What each authority is owed of the tax. */
export type TaxPartDue = TaxPart & { readonly taxableCents: Cents; readonly taxCents: Cents };

/** The tax of a sale: the whole, each line's share in the lines' order, each authority's share. */
export type TaxDue = {
  readonly taxCents: Cents;
  readonly perLineCents: readonly Cents[];
  readonly parts: readonly TaxPartDue[];
};

/**
 * The sales tax of a sale, exact to the cent.
 *
 * The rates of all authorities are added before anything is rounded, and half a cent goes up. By
 * invoice the whole is rounded once, and each line's share is within a cent of its exact tax; by
 * item each line is rounded, and the whole is their sum. The authorities share what was collected
 * by largest remainder. A return, with prices below zero, gives back what the sale took.
 *
 * @param parts none for a sale that nobody taxes; each rate a decimal of zero or more
 * @source Streamlined Sales and Use Tax Agreement, section 324
 * @example three lines of 9.99 at 7.25 %: 2.17 by invoice, 2.16 by item
 */
export function workOutTax(sale: {
  readonly lines: readonly TaxLine[];
  readonly parts: readonly TaxPart[];
  readonly roundBy: RoundBy;
}): TaxDue {
  const rates = alignDecimals(sale.parts.map(rateOf));
  const denominator = 100n * 10n ** BigInt(rates.scale);
  const rate = rates.units.reduce((sum, units) => sum + units, 0n);
  const taxed = sale.lines.map((line) => (line.taxable ? line.cents : 0n));
  const taxableCents = sumCents(taxed);

  const exact = taxed.map((cents) => cents * rate);
  const byItem = exact.map((product) => divideRounded(product, denominator, 'half-up'));
  const byInvoice = divideRounded(taxableCents * rate, denominator, 'half-up');
  const taxCents = sale.roundBy === 'item' ? sumCents(byItem) : byInvoice;

  const shares = rate === 0n ? sale.parts.map(() => 0n) : splitCents(taxCents, rates.units);
  return {
    taxCents,
    perLineCents: sale.roundBy === 'item' ? byItem : apportion(taxCents, exact, denominator).parts,
    parts: sale.parts.map((part, place) => ({
      name: part.name,
      ratePercent: part.ratePercent,
      taxableCents,
      taxCents: shares[place] ?? 0n,
    })),
  };
}

/**
 * The exact tax on an amount before it is rounded, as text in the currency's unit.
 *
 * @example exactTax(1_000n, '8.25') // '$0.825'
 */
export function exactTax(cents: Cents, ratePercent: string): string {
  const rate = rateOf({ name: 'the sale', ratePercent });
  const units = cents * rate.units;
  const size = formatDecimal({ units: units < 0n ? -units : units, scale: rate.scale + 4 });
  return `${units < 0n ? '−' : ''}${currencySigns.USD}${size}`;
}

/**
 * The rate of all authorities together, as a decimal string.
 *
 * @example combinedRatePercent([state, county]) // '8.375' for '6.5' and '1.875'; '0' for none
 */
export function combinedRatePercent(parts: readonly TaxPart[]): string {
  const { units, scale } = alignDecimals(parts.map(rateOf));
  return formatDecimal({ units: units.reduce((sum, each) => sum + each, 0n), scale });
}

/** A span of days: from the first, which is in it, until one which is not, or without an end. */
export type Dated = { readonly fromOn: Day; readonly untilOn: Day | null };

/**
 * The rates in force on a day.
 *
 * @returns those whose first day has come and whose end has not, in the order given
 * @example a rate from '2026-01-01' until '2026-07-01' is not in force on '2026-07-01'
 */
export function ratesOn<Rate extends Dated>(rates: readonly Rate[], day: Day): Rate[] {
  return rates.filter(
    (rate) => rate.fromOn <= day && (rate.untilOn === null || day < rate.untilOn),
  );
}

function rateOf(part: TaxPart) {
  const rate = parseDecimal(part.ratePercent);
  invariant(rate && rate.units >= 0n, `The rate of ${part.name} is a decimal of zero or more.`);
  return rate;
}
