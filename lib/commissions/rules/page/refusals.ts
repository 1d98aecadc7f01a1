import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about the collector’s own page was not done, and the facts that explain each. */
export type PageRefusalFacts = {
  link_shut: unknown;
  too_many_answers: unknown;
  unknown_link: unknown;
  link_shut_already: unknown;
  no_mail_address: unknown;
  wants_no_letters: { readonly name: string };
  mail_not_set_up: unknown;
};

/** Each of them in full sentences. */
export const pageSentences: Sentences<PageRefusalFacts> = {
  link_shut: () =>
    'This address no longer opens the page. Ask the gallery for a new one; nothing was written.',
  too_many_answers: () =>
    'Many answers came from this page within the hour. Wait a while, or call the gallery.',
  unknown_link: () => 'There is no such address for this commission.',
  link_shut_already: () => 'That address was withdrawn before; it opens nothing.',
  no_mail_address: () => 'Write the address to which the letter goes.',
  wants_no_letters: ({ name }) =>
    `${name} asked for no letters by email. Tell them another way, or tick that they asked for this one.`,
  mail_not_set_up: () =>
    'No mail server is set up here. Copy the words, and send them from your own mail.',
};
