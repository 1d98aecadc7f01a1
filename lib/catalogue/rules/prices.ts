import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { mostCents, shareCents, type Cents } from '@/lib/money/rules';
import { divideRounded } from '@/lib/money/rules/decimal';

/** To what a new price may be rounded, the finest first. */
export const priceSteps = [
  { key: 'cent', words: 'to the cent', cents: 1n },
  { key: 'half', words: 'to .00 or .50', cents: 50n },
  { key: 'whole', words: 'to the whole dollar', cents: 100n },
  { key: 'five', words: 'to five dollars', cents: 500n },
] as const;

/** One of the {@link priceSteps}, by its key. */
export type PriceStep = (typeof priceSteps)[number]['key'];

/**
 * A price raised (or, below nought, lowered) by a percentage and rounded to a step, half a step
 * up. A price above nought never falls below one step, and none goes beyond what can be written.
 *
 * @param percent decimal text, `'4.5'` or `'-10'`
 * @source common practice: one percentage over a whole kind, then a price that reads well
 * @example raisedPriceCents(13_800n, '4.5', 'whole') // 14_400n: 144.21 rounded
 */
export function raisedPriceCents(cents: Cents, percent: string, step: PriceStep): Cents {
  const { cents: stepCents } = priceSteps.find((each) => each.key === step) ?? priceSteps[0];
  const raised = cents + shareCents(cents, percent, 'half-up');
  const rounded = divideRounded(raised, stepCents, 'half-up') * stepCents;
  if (cents > 0n && rounded < stepCents) return stepCents;
  return rounded > mostCents ? mostCents : rounded;
}

/** Why a price was not changed. */
export type PriceRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_piece' }
  | { code: 'in_the_past'; todayOn: Day }
  | { code: 'same_price' }
  | { code: 'no_pieces_meant' }
  | { code: 'too_many_pieces'; most: number }
  | { code: 'prices_moved' }
  | { code: 'holds_already' };

/** Says in a full sentence why a price was not changed. */
export function priceRefusalMessage(refusal: PriceRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_piece':
      return 'This piece is not in the catalogue. Load the page again, please.';
    case 'in_the_past':
      return `A price holds from today, ${formatDay(refusal.todayOn, 'short')}, or from a later day.`;
    case 'same_price':
      return 'That is its price on that day already. There is nothing to change.';
    case 'no_pieces_meant':
      return 'No price would change. Choose other pieces, or another percentage.';
    case 'too_many_pieces':
      return `More than ${refusal.most.toLocaleString('en-US')} prices at once are too many. Choose a kind, a size or a design.`;
    case 'prices_moved':
      return 'A price changed while you were looking. Look once more, then say yes.';
    case 'holds_already':
      return 'That price holds already. Set another one from today instead.';
  }
}
