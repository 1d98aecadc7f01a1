import { commissionRefusalMessage, type CommissionNo } from '@/lib/commissions/rules/refusals';
import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';
import { formatDay, type Day } from '@/lib/dates/rules';
import { askedHeadline } from '@/lib/installation/rules/diary/question-words';
import type { AskRefusal } from '@/lib/installation/rules/diary/questions';
import { formatCents, type Cents } from '@/lib/money/rules';

/** Why days were not offered or chosen, and the facts that explain each. */
export type OffersRefusalFacts = {
  day_gone_by: { readonly on: Day };
  same_hours_twice: { readonly on: Day };
  past_midnight: { readonly on: Day };
  leads_nothing_here: unknown;
  goes_nowhere: unknown;
  wall_unknown: unknown;
  still_cures: { readonly on: Day };
  not_free_then: { readonly name: string; readonly on: Day };
  asks: { readonly questions: AskRefusal['questions']; readonly ownerAlone: boolean };
  unknown_offer: unknown;
  offer_withdrawn: unknown;
  day_chosen_already: { readonly on: Day };
  unknown_day: unknown;
  day_taken: { readonly on: Day };
  balance_first: { readonly owedCents: Cents };
};

/** The name of a refusal. */
export type OffersRefusalCode = keyof OffersRefusalFacts;

/** Why something about offered days was not done. */
export type OffersRefusal<Code extends OffersRefusalCode = OffersRefusalCode> = {
  [One in Code]: { readonly code: One } & OffersRefusalFacts[One];
}[Code];

/** What a command about offered days may answer besides: what any about a commission may. */
export type OffersNo = OffersRefusal | CommissionNo;

/** Says in full sentences why nothing was offered, chosen or taken back. */
export function offersRefusalMessage(refusal: OffersNo): string {
  return isOfOffers(refusal) ? say(refusal) : commissionRefusalMessage(refusal);
}

function say<Code extends OffersRefusalCode>(refusal: OffersRefusal<Code>): string {
  const sentence: Sentence<Code> = sentences[refusal.code];
  return sentence(refusal);
}

type Sentence<Code extends OffersRefusalCode> = (refusal: OffersRefusal<Code>) => string;

function isOfOffers(refusal: OffersNo): refusal is OffersRefusal {
  return refusal.code in sentences;
}

const sentences: Sentences<OffersRefusalFacts> = {
  day_gone_by: ({ on }) => `${formatDay(on, 'long')} has gone by. Offer days that are to come.`,
  same_hours_twice: ({ on }) =>
    `The hours on ${formatDay(on, 'long')} stand there twice. Change one of them or leave it out.`,
  past_midnight: ({ on }) =>
    `What begins on ${formatDay(on, 'long')} would last past midnight. Begin earlier, or make it shorter.`,
  leads_nothing_here: () => 'Choose who leads it; they must still work here.',
  goes_nowhere: () => 'Choose who goes along; they must still work here.',
  wall_unknown: () =>
    'Nobody knows yet what the wall is made of, so no day for a hanging is offered. Look at the wall first; a site visit can be offered meanwhile.',
  still_cures: ({ on }) =>
    `The adhesive has not cured on ${formatDay(on, 'long')}. Offer days after that.`,
  not_free_then: ({ name, on }) =>
    `${name} is elsewhere on ${formatDay(on, 'long')} at those hours. Leave it out, or choose another time.`,
  asks: (refusal) => askedHeadline(refusal),
  unknown_offer: () => 'Those days are not offered for this commission.',
  offer_withdrawn: () =>
    'The gallery took these days back. Ask for other ones; nothing was booked.',
  day_chosen_already: ({ on }) => `A day was chosen already: ${formatDay(on, 'long')}.`,
  unknown_day: () => 'Choose one of the days.',
  day_taken: ({ on }) =>
    `${formatDay(on, 'long')} is no longer free at those hours. Choose another of the days, or call the gallery.`,
  balance_first: ({ owedCents }) =>
    `The agreement asks for ${formatCents(owedCents)} before that day. Once it is here you can choose; nothing was booked.`,
};
