import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { certificateWords, type CertificateStanding } from '@/lib/collectors/rules/trade';
import { commissionRefusalMessage, type CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { formatDay, formatInstant, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';
import { saleRefusalMessage, type SaleRefusal } from '@/lib/sales/rules/refusals';

/** No facts besides its name. */
type Nothing = unknown;

/** Why a slip was not changed or sold, and the facts that explain each. */
type SlipRefusalFacts = {
  unknown_slip: Nothing;
  slip_sold_already: { readonly number: number };
  slip_thrown_away: Nothing;
  slip_changed_meanwhile: Nothing;
  slip_is_full: Nothing;
  unknown_set: Nothing;
  unknown_place: Nothing;
  unknown_tax_place: Nothing;
  unknown_designer: Nothing;
  unknown_commission_number: { readonly number: number };
  paper_has_ended: { readonly what: string };
  more_than_is_left: { readonly what: string; readonly leftCents: Cents };
  one_payment_a_slip: Nothing;
  payment_needs_money: Nothing;
  payment_refused: { readonly refusal: CommissionRefusal };
  collect_day_has_passed: { readonly untilOn: Day };
  held_for_another: {
    readonly title: string;
    readonly forWhom: string;
    readonly untilAt: Date | null;
    readonly hasLapsed: boolean;
  };
  choose_numbers: {
    readonly title: string;
    readonly wanted: number;
    readonly numbersHere: readonly number[];
  };
  number_not_here: { readonly title: string; readonly number: number };
  set_is_not_split: { readonly title: string; readonly set: string };
  discount_above_price: { readonly title: string; readonly leftCents: Cents };
  discount_beyond_leave: { readonly mostPercent: string; readonly mostCents: Cents };
  no_trade_price: Nothing;
  discount_or_fee_never_both: Nothing;
  no_referral_terms: { readonly name: string };
  designer_is_the_buyer: { readonly name: string };
  certificate_does_not_hold: { readonly standing: CertificateStanding };
};

type SlipRefusalCode = keyof SlipRefusalFacts;

/** Why a slip was not changed or sold, besides what any sale may be refused with. */
export type SlipRefusal<Code extends SlipRefusalCode = SlipRefusalCode> = {
  [One in Code]: { readonly code: One } & SlipRefusalFacts[One];
}[Code];

/** Why something was not done at the counter; each carries the facts that explain it. */
export type CounterRefusal = SaleRefusal | SlipRefusal;

/** What a command of the counter may be refused with. */
export type AnyCounterRefusal =
  CounterRefusal | NotAllowed | { code: 'key_used_for_something_else' };

/**
 * Says in full sentences why something was not done, as one would say it over the counter.
 *
 * @param zone the gallery's own, for the hour until which something is held
 */
export function counterRefusalMessage(refusal: AnyCounterRefusal, zone: string): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'key_used_for_something_else') {
    return (
      'This was sent before with something else in it. Look at the slip once more, and at ' +
      'today’s receipts before you sell it again.'
    );
  }
  return isOfTheSlip(refusal) ? say(refusal, zone) : saleRefusalMessage(refusal);
}

function isOfTheSlip(refusal: CounterRefusal): refusal is SlipRefusal {
  return refusal.code in sentences;
}

function say<Code extends SlipRefusalCode>(refusal: SlipRefusal<Code>, zone: string): string {
  const sentence: Sentence<Code> = sentences[refusal.code];
  return sentence(refusal, zone);
}

type Sentence<Code extends SlipRefusalCode> = (refusal: SlipRefusal<Code>, zone: string) => string;

const sentences: { readonly [Code in SlipRefusalCode]: Sentence<Code> } = {
  unknown_slip: () => 'There is no such slip any more. Begin a new one.',
  slip_sold_already: ({ number }) =>
    `This slip was sold already: it is receipt ${number}. What comes next begins a new slip.`,
  slip_thrown_away: () => 'This slip was thrown away meanwhile. Begin a new one.',
  slip_changed_meanwhile: () =>
    'Somebody changed this slip meanwhile, on another device. You see it now as it is; look at ' +
    'it once more.',
  slip_is_full: () => 'There is no more room on this slip. Sell it, and begin another.',
  unknown_set: () => 'That set is no longer kept. Take it off and find its pieces one by one.',
  unknown_place: () => 'Nothing is sold from there today. Choose the gallery or an open fair.',
  unknown_tax_place: () => 'Choose the place whose sales tax applies where it goes.',
  unknown_designer: () => 'That designer is not in the address book.',
  unknown_commission_number: ({ number }) => `There is no commission ${number}.`,
  paper_has_ended: ({ what }) => `${what} has ended, so no money is taken for it.`,
  more_than_is_left: ({ what, leftCents }) =>
    `For ${what}, ${formatCents(leftCents)} is left to pay, and no more.`,
  one_payment_a_slip: () =>
    'One slip takes one payment for a commission. Put the other on a slip of its own.',
  payment_needs_money: () =>
    'A payment for a commission is taken in cash, by card, cheque or bank transfer, not with a voucher alone.',
  payment_refused: ({ refusal }) => commissionRefusalMessage(refusal),
  collect_day_has_passed: ({ untilOn }) =>
    `${formatDay(untilOn, 'short')} has passed. Choose a day to come until which it hangs here.`,
  held_for_another: heldMessage,
  choose_numbers: ({ title, wanted, numbersHere }) =>
    `${title} is a numbered edition. Choose ${wanted === 1 ? 'its number' : `${wanted} numbers`}: ` +
    `${numbersHere.join(', ')} ${numbersHere.length === 1 ? 'is' : 'are'} here.`,
  number_not_here: ({ title, number }) =>
    `Number ${number} of ${title} is not here. Look at the number on its back.`,
  set_is_not_split: ({ title, set }) =>
    `${title} belongs to “${set}”, which is never split. Sell the whole set; the owner may split it.`,
  discount_above_price: ({ title, leftCents }) =>
    `No more than ${formatCents(leftCents)} can come off ${title}.`,
  discount_beyond_leave: ({ mostPercent, mostCents }) =>
    `You may take off ${mostPercent} in 100 by yourself, ${formatCents(mostCents)} here. Ask the owner for more.`,
  no_trade_price: () =>
    'There is no trade price for this name. Put the designer’s name on the slip, or take the trade price off.',
  discount_or_fee_never_both: () =>
    'A designer gets the trade price or a referral fee, never both on one sale. Take one of them off.',
  no_referral_terms: ({ name }) =>
    `No referral fee was agreed with ${name}. The owner writes it down on their page.`,
  designer_is_the_buyer: ({ name }) =>
    `${name} is the buyer here, and nobody earns a referral fee for what they buy themselves.`,
  certificate_does_not_hold: ({ standing }) =>
    `It cannot be sold for resale. ${certificateWords(standing)}`,
};

function heldMessage(refusal: SlipRefusal<'held_for_another'>, zone: string): string {
  const { title, forWhom, untilAt, hasLapsed } = refusal;
  if (untilAt === null) return `${title} is put away for ${forWhom}. It is not for sale.`;
  const until = formatInstant(untilAt, zone);
  return hasLapsed
    ? `${title} was held for ${forWhom} until ${until}. That has lapsed: let it go under Holds, ` +
        'then it can be sold.'
    : `${title} is held for ${forWhom} until ${until}. Call them before you sell it.`;
}
