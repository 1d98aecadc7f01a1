import { formatDay, type Day } from '@/lib/dates/rules';
import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about a proposal was not done, and the facts that explain each. */
export type ProposalRefusalFacts = {
  proposal_ran_out: { readonly validUntilOn: Day };
};

/** Each of them in full sentences. */
export const proposalSentences: Sentences<ProposalRefusalFacts> = {
  proposal_ran_out: ({ validUntilOn }) =>
    `This proposal held until ${formatDay(validUntilOn, 'long')}. Ask for a new one; nothing was accepted.`,
};
