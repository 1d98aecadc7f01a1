import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { addDays, formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';

/** Money that the gallery owes in pieces: a voucher that was sold, or a credit that was given. */
export type CreditKind = 'voucher' | 'store_credit';

/** How each is called. */
export const creditWords: Readonly<Record<CreditKind, string>> = {
  voucher: 'Gift voucher',
  store_credit: 'Store credit',
};

/** The least time for which a gift voucher holds, in days: five years, with two leap days. */
const leastLifeDays = 5 * 365 + 2;

/**
 * The first day on which a voucher of this day may run out.
 *
 * @source the five years that federal law of the United States gives a gift voucher at least, as
 *   common practice tells it; what a state adds is the owner's to look up
 * @example earliestEnd('2026-11-25') // '2031-11-26'
 */
export function earliestEnd(soldOn: Day): Day {
  return addDays(soldOn, leastLifeDays);
}

/** Whether a voucher sold on that day may run out on the other; one without an end always may. */
export function mayRunOut(soldOn: Day, expiresOn: Day | null): boolean {
  return expiresOn === null || expiresOn >= earliestEnd(soldOn);
}

/** Whether a voucher can still be used on a day: its last day counts. */
export function isStillGood(expiresOn: Day | null, on: Day): boolean {
  return expiresOn === null || on <= expiresOn;
}

/** What a month did to the vouchers or the credits: what was owed, and what became of it. */
export type CreditRoll = {
  kind: CreditKind;
  openingCents: Cents;
  /** Sold over the counter. */
  soldCents: Cents;
  /** Put on by a return, or by the owner's hand. */
  givenCents: Cents;
  /** Paid with; below zero. */
  usedCents: Cents;
  /** Sold by mistake or brought back unspent; below zero. */
  takenBackCents: Cents;
  closingCents: Cents;
};

/** Why a store credit was not opened. */
export type CreditRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_collector' }
  | { code: 'card_number_typed' }
  | { code: 'far_too_much'; mostCents: Cents };

/** The most that a store credit is opened with by hand: more is a slip of the finger. */
export const mostCreditCents: Cents = 1_000_000n;

/** Says in a full sentence why a store credit was not opened. */
export function creditRefusalMessage(refusal: CreditRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_collector':
      return 'That collector is not in the address book. Choose another, or leave it open.';
    case 'card_number_typed':
      return 'That looks like the number of a card, which is never kept. Write it without, please.';
    case 'far_too_much':
      return `At most ${formatCents(refusal.mostCents)} is given by hand. Look at the amount again.`;
  }
}

/** Until when it is good, as the paper says it. */
export function untilWords(expiresOn: Day | null): string {
  return expiresOn === null
    ? 'It does not run out.'
    : `Good until ${formatDay(expiresOn, 'long')}.`;
}
