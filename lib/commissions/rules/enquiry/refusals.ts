import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about an enquiry was not done, and the facts that explain each. */
export type EnquiryRefusalFacts = {
  referral_settled: unknown;
};

/** Each of them in full sentences. */
export const enquirySentences: Sentences<EnquiryRefusalFacts> = {
  referral_settled: () =>
    'Who brought them was settled before it was agreed; only the owner changes that now.',
};
