import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { holdRefusalMessage, type HoldRefusal } from '@/lib/holds/rules/refusals';
import { formatCents, type Cents } from '@/lib/money/rules';

/** What can be said without further facts. */
const plainWords = {
  key_used_for_something_else:
    'This page was sent before with something else in it. Load it again, please.',
  nothing_chosen: 'Choose the pieces first; at least one.',
  unknown_collector:
    'Nobody by that name is in the address book. Find them by a few letters, or add them.',
  discount_without_reason: 'Say why something is taken off.',
  unknown_layaway: 'There is no such layaway. Load the page again, please.',
  nothing_paid: 'Nothing was paid on it yet, so there is nothing to keep.',
  keeping_is_the_owners: 'Only the owner keeps part of the money. Give everything back, or ask.',
} as const;

type PlainRefusal = { code: keyof typeof plainWords };

/** Why a layaway was not begun, paid, handed over or cancelled. */
export type LayawayRefusal =
  | PlainRefusal
  | { code: 'unknown_piece_chosen'; sku: string }
  | { code: 'no_price'; title: string }
  | { code: 'no_tax_rate'; place: string }
  | { code: 'discount_above_price'; netCents: Cents }
  | { code: 'discount_beyond_staff'; percent: string }
  | { code: 'price_changed'; shownCents: Cents; nowCents: Cents }
  | { code: 'last_day_too_soon'; payments: number; agreedOn: Day }
  | { code: 'last_day_too_far'; daysMost: number }
  | { code: 'down_leaves_nothing'; totalCents: Cents; payments: number }
  | { code: 'not_held'; hold: HoldRefusal }
  | { code: 'layaway_has_ended'; number: number; how: 'handed_over' | 'cancelled' }
  | { code: 'more_than_remains'; remainingCents: Cents; amountCents: Cents }
  | { code: 'not_paid_off'; remainingCents: Cents }
  | { code: 'paid_too_much'; tooMuchCents: Cents }
  | { code: 'keeps_more_than_paid'; paidCents: Cents; keepCents: Cents };

/** What a command about layaways may be refused with. */
export type AnyLayawayRefusal = LayawayRefusal | NotAllowed;

/** Says in full sentences why nothing was written, as one would say it over the counter. */
export function layawayRefusalMessage(refusal: AnyLayawayRefusal, zone: string): string {
  if (isPlain(refusal)) return plainWords[refusal.code];
  if (isOfAmounts(refusal)) return amountMessage(refusal);
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'not_held':
      return holdRefusalMessage(refusal.hold, zone);
    case 'unknown_piece_chosen':
      return `${refusal.sku} is not in the catalogue. Choose the piece again.`;
    case 'no_price':
      return `${refusal.title} has no price yet. The owner sets one under Prices and tags.`;
    case 'no_tax_rate':
      return (
        `No sales tax rate is kept for ${refusal.place} today. The owner keeps the rates; ` +
        'a rate of 0 is one too.'
      );
    case 'layaway_has_ended':
      return refusal.how === 'cancelled'
        ? `Layaway ${refusal.number} was cancelled.`
        : `Layaway ${refusal.number} was handed over already.`;
  }
}

type OtherCode =
  'not_held' | 'unknown_piece_chosen' | 'no_price' | 'no_tax_rate' | 'layaway_has_ended';
type AmountRefusal = Exclude<LayawayRefusal, PlainRefusal | { code: OtherCode }>;

const otherCodes: readonly string[] = [
  ...['not_allowed', 'not_held', 'unknown_piece_chosen', 'no_price', 'no_tax_rate'],
  'layaway_has_ended',
];

function isOfAmounts(refusal: Exclude<AnyLayawayRefusal, PlainRefusal>): refusal is AmountRefusal {
  return !otherCodes.includes(refusal.code);
}

function isPlain(refusal: AnyLayawayRefusal): refusal is PlainRefusal {
  return refusal.code in plainWords;
}

function amountMessage(refusal: AmountRefusal): string {
  switch (refusal.code) {
    case 'discount_above_price':
      return `All of it comes to ${formatCents(refusal.netCents)}. Take off less than that.`;
    case 'discount_beyond_staff':
      return `That is more than ${refusal.percent} in 100. The owner can take off more.`;
    case 'price_changed':
      return (
        `It comes to ${formatCents(refusal.nowCents)} now, and the page said ` +
        `${formatCents(refusal.shownCents)}. Look at it once more.`
      );
    case 'last_day_too_soon':
      return `${refusal.payments} payments need as many days after ${formatDay(refusal.agreedOn, 'short')}.`;
    case 'last_day_too_far':
      return `Pieces are put away for at most ${refusal.daysMost} days. Choose an earlier last day.`;
    case 'down_leaves_nothing':
      return (
        `Of ${formatCents(refusal.totalCents)} at least ${refusal.payments} cents must be left for ` +
        'the later payments. Take less now, or sell it at the counter.'
      );
    case 'more_than_remains':
      return refusal.remainingCents === 0n
        ? 'It is paid off; nothing more is due.'
        : `Only ${formatCents(refusal.remainingCents)} is still to be paid.`;
    case 'not_paid_off':
      return `${formatCents(refusal.remainingCents)} is still to be paid before it is handed over.`;
    case 'paid_too_much':
      return (
        `${formatCents(refusal.tooMuchCents)} more was paid than it comes to today. Give that back ` +
        'from its receipt first.'
      );
    case 'keeps_more_than_paid':
      return `Only ${formatCents(refusal.paidCents)} was paid, so no more than that can be kept.`;
  }
}
