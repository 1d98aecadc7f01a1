import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about an agreement and its change orders was not done, and the facts that explain each. */
export type AgreementRefusalFacts = {
  paper_changed: unknown;
};

/** Each of them in full sentences. */
export const agreementSentences: Sentences<AgreementRefusalFacts> = {
  paper_changed: () =>
    'The paper has changed since you looked at it. Nothing was signed; read it once more.',
};
