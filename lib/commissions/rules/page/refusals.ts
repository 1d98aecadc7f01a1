import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about the collector’s own page was not done, and the facts that explain each. */
export type PageRefusalFacts = {
  link_shut: unknown;
};

/** Each of them in full sentences. */
export const pageSentences: Sentences<PageRefusalFacts> = {
  link_shut: () =>
    'This address no longer opens the page. Ask the gallery for a new one; nothing was written.',
};
