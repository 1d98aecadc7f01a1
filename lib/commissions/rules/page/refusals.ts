import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';
import { formatDay, type Day } from '@/lib/dates/rules';

/** Why something about the collector’s own page was not done, and the facts that explain each. */
export type PageRefusalFacts = {
  link_shut: unknown;
  too_many_answers: unknown;
  unknown_link: unknown;
  link_shut_already: unknown;
  no_mail_address: unknown;
  wants_no_letters: { readonly name: string };
  mail_not_set_up: unknown;
  day_gone_by: { readonly on: Day };
  same_hours_twice: { readonly on: Day };
  past_midnight: { readonly on: Day };
  leads_nothing_here: unknown;
  unknown_offer: unknown;
  offer_withdrawn: unknown;
  day_chosen_already: { readonly on: Day };
  unknown_day: unknown;
  day_taken: { readonly on: Day };
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
  day_gone_by: ({ on }) => `${formatDay(on, 'long')} has gone by. Offer days that are to come.`,
  same_hours_twice: ({ on }) =>
    `The hours on ${formatDay(on, 'long')} stand there twice. Change one of them or leave it out.`,
  past_midnight: ({ on }) =>
    `What begins on ${formatDay(on, 'long')} would last past midnight. Begin earlier, or make it shorter.`,
  leads_nothing_here: () => 'Choose who leads it; they must still work here.',
  unknown_offer: () => 'Those days are not offered for this commission.',
  offer_withdrawn: () =>
    'The gallery took these days back. Ask for other ones; nothing was booked.',
  day_chosen_already: ({ on }) => `A day was chosen already: ${formatDay(on, 'long')}.`,
  unknown_day: () => 'Choose one of the days.',
  day_taken: ({ on }) =>
    `${formatDay(on, 'long')} is no longer free at those hours. Choose another of the days, or call the gallery.`,
};
