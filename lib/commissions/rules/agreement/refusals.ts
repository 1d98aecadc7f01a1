import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';
import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';

/** Why something about an agreement or a change order was not done, and the facts that explain each. */
export type AgreementRefusalFacts = {
  no_accepted_proposal: unknown;
  paper_changed: unknown;
  unknown_change: unknown;
  change_signed_already: { readonly signedOn: Day };
  change_withdrawn: unknown;
  change_below_paid: { readonly totalCents: Cents; readonly paidCents: Cents };
  change_leaves_nothing: unknown;
  change_overtaken: unknown;
  change_day_is_past: { readonly on: Day };
  unknown_state: { readonly state: string };
  tax_rule_follows_already: { readonly fromOn: Day };
};

/** Each of them in full sentences. */
export const agreementSentences: Sentences<AgreementRefusalFacts> = {
  no_accepted_proposal: () =>
    'No proposal was accepted yet. The agreement is built from the one that is.',
  paper_changed: () =>
    'The paper has changed since you looked at it. Nothing was signed; read it once more.',
  unknown_change: () => 'There is no such change order for this commission.',
  change_signed_already: ({ signedOn }) =>
    `It was signed on ${formatDay(signedOn, 'long')} already.`,
  change_withdrawn: () => 'This change order was withdrawn. Nothing was signed.',
  change_below_paid: ({ totalCents, paidCents }) =>
    `With it the whole would be ${formatCents(totalCents)}, and ${formatCents(paidCents)} was paid. Give the difference back first.`,
  change_leaves_nothing: () =>
    'With it nothing would be left of the price. End the commission instead, or take off less.',
  change_overtaken: () =>
    'Another change was signed since it was written, so its price or its day is no longer what it says. It has to be withdrawn and written once more.',
  change_day_is_past: ({ on }) => `${formatDay(on, 'long')} is past. Promise a day to come.`,
  unknown_state: ({ state }) =>
    `No place in ${state} is kept yet. Write down a place there first, under Sales tax.`,
  tax_rule_follows_already: ({ fromOn }) =>
    `Something is kept from ${formatDay(fromOn, 'short')} that reaches into these days. Choose a later first day.`,
};
