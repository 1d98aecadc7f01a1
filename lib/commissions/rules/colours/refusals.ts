import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about sketches, colour tiles and the answers to them was not done, and the facts that explain each. */
export type ColoursRefusalFacts = {
  newer_shown: { readonly label: string };
};

/** Each of them in full sentences. */
export const coloursSentences: Sentences<ColoursRefusalFacts> = {
  newer_shown: ({ label }) =>
    `In the meantime ${label} was shown. Nothing was approved; look at that one first.`,
};
