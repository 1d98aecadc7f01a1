import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';
import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about the course of a commission was not done, and the facts that explain each. */
export type CourseRefusalFacts = {
  balance_still_owed: { readonly owedCents: Cents };
  no_day_promised: unknown;
  same_day_as_told: { readonly on: Day };
  unknown_progress: unknown;
  shown_already: { readonly shared: boolean };
};

/** Each of them in full sentences. */
export const courseSentences: Sentences<CourseRefusalFacts> = {
  balance_still_owed: ({ owedCents }) =>
    `${formatCents(owedCents)} is still owed before it leaves. Take it first, or say why it goes anyway.`,
  no_day_promised: () => 'No day is promised yet, so none can move.',
  same_day_as_told: ({ on }) =>
    `They were told ${formatDay(on, 'long')} already. Choose another day.`,
  unknown_progress: () => 'This is not on the sheet any more. Open it again.',
  shown_already: ({ shared }) =>
    shared ? 'It is on their page already.' : 'It is not on their page as it is.',
};
