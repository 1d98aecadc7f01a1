import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about the money of a commission was not done, and the facts that explain each. */
export type MoneyRefusalFacts = {
  looks_like_twice: { readonly number: number };
};

/** Each of them in full sentences. */
export const moneySentences: Sentences<MoneyRefusalFacts> = {
  looks_like_twice: ({ number }) =>
    `Payment ${number} of today has the same amount and was paid the same way. If this is another one, say so below.`,
};
