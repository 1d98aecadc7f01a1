import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, shareCents, splitCents, sumCents, type Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Who bears a discount that the other gallery gave its buyer. */
export const bearers = [
  { bearer: 'nobody', words: 'no discount' },
  { bearer: 'gallery', words: 'the gallery' },
  { bearer: 'us', words: 'us' },
  { bearer: 'both', words: 'half each' },
] as const;

/** One of the {@link bearers}. */
export type Bearer = (typeof bearers)[number]['bearer'];

/** Who bears a discount, in words. */
export function bearerWords(bearer: Bearer): string {
  return bearers.find((each) => each.bearer === bearer)?.words ?? '';
}

/** A discount as it was told: an amount, or a share of the retail price. */
export type DiscountTold = { cents: Cents } | { percent: string };

/** A line of what the other gallery says it sold. */
export type LineTold = {
  skuId: string;
  sku: string;
  /** Which number of its edition; null for what is not numbered. */
  number: number | null;
  quantity: number;
  soldOn: Day;
  retailCents: Cents;
  discount: DiscountTold | null;
  borneBy: Bearer;
};

/** A line with what is due for it. All in cents, and for all its pieces together. */
export type LineDue = LineTold & {
  grossCents: Cents;
  discountCents: Cents;
  /** What of the discount is ours to bear. */
  ourDiscountCents: Cents;
  shareCents: Cents;
  dueCents: Cents;
};

/** Why a line of a statement was not taken. */
export type LineRefusal =
  | { code: 'sold_outside'; sku: string; fromOn: Day; untilOn: Day }
  | { code: 'discount_above_price'; sku: string; grossCents: Cents }
  | { code: 'discount_needs_bearer'; sku: string }
  | { code: 'discount_above_ours'; sku: string; oursCents: Cents };

/**
 * What is due for a line: the retail price, less the gallery's share of it, less what of a discount
 * is ours to bear.
 *
 * The share is reckoned on the retail price, rounded half a cent up. Of a discount that is borne
 * half each, an odd cent is the gallery's, which gave it.
 *
 * @param sharePercent decimal string above 0 and below 100
 * @returns refuses, in this order: a discount above the price, one that nobody bears, one that
 *   leaves less than nothing to us
 * @source common practice
 * @example 380.00 with 10 % borne by the gallery, at 50 %: due 190.00
 */
export function lineDue(line: LineTold, sharePercent: string): Result<LineDue, LineRefusal> {
  const { sku, discount } = line;
  const grossCents = line.retailCents * BigInt(line.quantity);
  const discountCents = discountOf(grossCents, discount);
  if (discountCents > grossCents) return refuse({ code: 'discount_above_price', sku, grossCents });
  if (discountCents > 0n && line.borneBy === 'nobody') {
    return refuse({ code: 'discount_needs_bearer', sku });
  }
  const borneBy = discountCents === 0n ? 'nobody' : line.borneBy;
  const ourDiscountCents = ourPartOf(discountCents, borneBy);
  const galleryCents = shareCents(grossCents, sharePercent, 'half-up');
  const oursCents = grossCents - galleryCents;
  if (ourDiscountCents > oursCents) return refuse({ code: 'discount_above_ours', sku, oursCents });
  const reckoned = { grossCents, discountCents, ourDiscountCents, borneBy };
  const dueCents = oursCents - ourDiscountCents;
  return ok({ ...line, ...reckoned, shareCents: galleryCents, dueCents });
}

function discountOf(grossCents: Cents, discount: DiscountTold | null): Cents {
  if (!discount) return 0n;
  if ('cents' in discount) return discount.cents;
  return shareCents(grossCents, discount.percent, 'half-up');
}

/**
 * What of a discount is ours to bear, in cents; of half each, an odd cent is the gallery's.
 *
 * @example ourPartOf(3_801n, 'both') // 1_900n
 */
export function ourPartOf(discountCents: Cents, borneBy: Bearer): Cents {
  switch (borneBy) {
    case 'nobody':
    case 'gallery':
      return 0n;
    case 'us':
      return discountCents;
    case 'both':
      return splitCents(discountCents, [1n, 1n])[1] ?? 0n;
  }
}

/** A statement that adds up: its lines, and what is due for them together. */
export type StatementDue = { lines: LineDue[]; dueCents: Cents };

/**
 * What is due for all that the other gallery says it sold.
 *
 * @returns refuses the first line that was sold outside the days of the statement, and then what
 *   {@link lineDue} refuses, with the line's place in the order given
 */
export function statementDue(
  lines: readonly LineTold[],
  terms: { sharePercent: string; fromOn: Day; untilOn: Day },
): Result<StatementDue, LineRefusal & { place: number }> {
  const due: LineDue[] = [];
  for (const [place, line] of lines.entries()) {
    const { fromOn, untilOn } = terms;
    if (line.soldOn < fromOn || line.soldOn > untilOn) {
      return refuse({ code: 'sold_outside', sku: line.sku, fromOn, untilOn, place });
    }
    const decided = lineDue(line, terms.sharePercent);
    if (!decided.ok) return refuse({ ...decided.refusal, place });
    due.push(decided.value);
  }
  return ok({ lines: due, dueCents: sumCents(due.map((line) => line.dueCents)) });
}

/** Says in a full sentence why a line of a statement was not taken. */
export function lineRefusalMessage(refusal: LineRefusal): string {
  switch (refusal.code) {
    case 'sold_outside':
      return (
        `This statement is for ${formatDay(refusal.fromOn, 'short')} to ` +
        `${formatDay(refusal.untilOn, 'short')}. Write a day within it.`
      );
    case 'discount_above_price':
      return `The discount is more than the price, ${formatCents(refusal.grossCents)}.`;
    case 'discount_needs_bearer':
      return 'Say who bears the discount: the gallery, we, or half each.';
    case 'discount_above_ours':
      return `Our part is ${formatCents(refusal.oursCents)}; we cannot bear more than that.`;
  }
}
