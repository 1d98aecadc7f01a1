import { formatCents, type Cents } from '@/lib/money/rules';
import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about the course of a commission was not done, and the facts that explain each. */
export type CourseRefusalFacts = {
  balance_still_owed: { readonly owedCents: Cents };
};

/** Each of them in full sentences. */
export const courseSentences: Sentences<CourseRefusalFacts> = {
  balance_still_owed: ({ owedCents }) =>
    `${formatCents(owedCents)} is still owed before it leaves. Take it first, or say why it goes anyway.`,
};
