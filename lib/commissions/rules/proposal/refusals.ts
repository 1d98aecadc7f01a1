import { formatDay, type Day } from '@/lib/dates/rules';
import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about a proposal was not done, and the facts that explain each. */
export type ProposalRefusalFacts = {
  price_not_worked_out: unknown;
  plan_above_total: unknown;
  valid_until_is_past: { readonly validUntilOn: Day };
  agreed_already: { readonly agreedOn: Day };
  unknown_proposal: unknown;
  proposal_sent_already: { readonly sentOn: Day };
  proposal_not_sent: unknown;
  proposal_ran_out: { readonly validUntilOn: Day };
  other_proposal: unknown;
  newer_proposal: { readonly version: number };
  answered_already: { readonly answeredBy: string; readonly accepted: boolean };
};

/** Each of them in full sentences. */
export const proposalSentences: Sentences<ProposalRefusalFacts> = {
  price_not_worked_out: () =>
    'The price asked for does not cover what stands apart, or the piece is too large. Look at the figures again.',
  plan_above_total: () =>
    'The steps of the plan come to more than the price with its tax. Make them smaller.',
  valid_until_is_past: ({ validUntilOn }) =>
    `It would have run out on ${formatDay(validUntilOn, 'long')} already. Choose a later day.`,
  agreed_already: ({ agreedOn }) =>
    `It was agreed on ${formatDay(agreedOn, 'long')}; what changes now is a change order.`,
  unknown_proposal: () => 'There is no such proposal for this commission.',
  proposal_sent_already: ({ sentOn }) => `It went out on ${formatDay(sentOn, 'long')} already.`,
  proposal_not_sent: () => 'It has not gone out yet, so nobody can have answered it.',
  proposal_ran_out: ({ validUntilOn }) =>
    `This proposal held until ${formatDay(validUntilOn, 'long')}. Ask for a new one; nothing was accepted.`,
  other_proposal: () =>
    'The proposal is not the one you were looking at. Nothing was accepted; read it once more.',
  newer_proposal: ({ version }) =>
    `In the meantime proposal ${version} went out. Nothing was accepted; look at that one.`,
  answered_already: ({ answeredBy, accepted }) =>
    `${answeredBy} already said ${accepted ? 'yes' : 'no'} to it.`,
};
