import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { pictureRefusalMessage, type PictureRefusal } from '@/lib/files/rules';
import { formatCents, type Cents } from '@/lib/money/rules';

import { agreementSentences, type AgreementRefusalFacts } from './agreement/refusals';
import { coloursSentences, type ColoursRefusalFacts } from './colours/refusals';
import { courseSentences, type CourseRefusalFacts } from './course/refusals';
import { enquirySentences, type EnquiryRefusalFacts } from './enquiry/refusals';
import { moneySentences, type MoneyRefusalFacts } from './money/refusals';
import { pageSentences, type PageRefusalFacts } from './page/refusals';
import { proposalSentences, type ProposalRefusalFacts } from './proposal/refusals';

/** No facts besides its name. */
type Nothing = unknown;

/** Why something about a commission was not done, and the facts that explain each. */
export type CommissionRefusalFacts = GeneralRefusalFacts &
  EnquiryRefusalFacts &
  ProposalRefusalFacts &
  ColoursRefusalFacts &
  AgreementRefusalFacts &
  MoneyRefusalFacts &
  PageRefusalFacts &
  CourseRefusalFacts;

/** Those that do not belong to one subject. */
export type GeneralRefusalFacts = {
  unknown_commission: Nothing;
  unknown_collector: Nothing;
  ended_early: { readonly endedOn: Day };
  handed_over_already: { readonly handedOn: Day };
  day_to_come: { readonly on: Day };
  picture_not_kept: { readonly picture: PictureRefusal };
  not_agreed_yet: Nothing;
  unknown_tax_place: Nothing;
  deposit_above_total: { readonly depositCents: Cents; readonly totalCents: Cents };
  agreed_below_paid: { readonly totalCents: Cents; readonly paidCents: Cents };
  nothing_shown: Nothing;
  other_picture: Nothing;
  approved_already: { readonly approvedBy: string; readonly approvedOn: Day };
  before_it_was_shown: { readonly shownOn: Day };
  due_before_asked: { readonly askedOn: Day };
  more_than_to_ask: { readonly leftCents: Cents };
  more_than_owed: { readonly owedCents: Cents };
  unknown_instalment: Nothing;
  card_number_in_reference: Nothing;
  may_begin_already: Nothing;
  let_begin_already: Nothing;
  job_not_finished: { readonly jobNumber: number };
  older_than_last_payment: { readonly receivedOn: Day };
  no_tax_rate_for_site: { readonly place: string; readonly on: Day };
  drawing_not_kept: Nothing;
  paid_above_total: { readonly paidCents: Cents; readonly totalCents: Cents };
};

/** The name of a refusal. */
export type CommissionRefusalCode = keyof CommissionRefusalFacts;

/** Why something about a commission was not done. */
export type CommissionRefusal<Code extends CommissionRefusalCode = CommissionRefusalCode> = {
  [One in Code]: { readonly code: One } & CommissionRefusalFacts[One];
}[Code];

/** What a command may answer besides: the person may not, or the form's key was used before. */
export type CommissionNo = CommissionRefusal | NotAllowed | { code: 'key_used_for_something_else' };

/** Says in full sentences why something about a commission was not done. */
export function commissionRefusalMessage(refusal: CommissionNo): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'key_used_for_something_else') {
    return 'This form was sent before with something else in it. Open the page again.';
  }
  return say(refusal);
}

function say<Code extends CommissionRefusalCode>(refusal: CommissionRefusal<Code>): string {
  const sentence: Sentence<Code> = sentences[refusal.code];
  return sentence(refusal);
}

type Sentence<Code extends CommissionRefusalCode> = (refusal: CommissionRefusal<Code>) => string;

const sentences: { [Code in CommissionRefusalCode]: Sentence<Code> } = {
  ...enquirySentences,
  ...proposalSentences,
  ...coloursSentences,
  ...agreementSentences,
  ...moneySentences,
  ...pageSentences,
  ...courseSentences,
  unknown_commission: () => 'There is no such commission. Find it in the list.',
  unknown_collector: () =>
    'Nobody by that name is in the address book. Find them by a few letters, or add them.',
  ended_early: ({ endedOn }) =>
    `This commission ended on ${short(endedOn)}; nothing more is written to it.`,
  handed_over_already: ({ handedOn }) => `It was handed over on ${short(handedOn)}.`,
  day_to_come: ({ on }) =>
    `${formatDay(on, 'long')} is still to come. Write the day on which it happened.`,
  picture_not_kept: ({ picture }) => pictureRefusalMessage(picture),
  not_agreed_yet: () => 'Nothing is agreed yet. Write down the price first.',
  unknown_tax_place: () => 'Choose the place whose sales tax applies where the piece will hang.',
  deposit_above_total: ({ depositCents, totalCents }) =>
    `A deposit of ${formatCents(depositCents)} is more than the whole, ${formatCents(totalCents)} with tax.`,
  agreed_below_paid: ({ paidCents, totalCents }) =>
    `${formatCents(paidCents)} was paid already, more than ${formatCents(totalCents)} with tax. Settle that with the collector first.`,
  nothing_shown: () => 'Nothing of that letter or number was shown yet.',
  other_picture: () =>
    'The picture is not the one you were looking at. Look at the sheet again before you write down a yes.',
  approved_already: ({ approvedBy, approvedOn }) =>
    `${approvedBy} already said yes to it, on ${short(approvedOn)}.`,
  before_it_was_shown: ({ shownOn }) =>
    `It was shown on ${short(shownOn)}; a yes cannot be older than that.`,
  due_before_asked: ({ askedOn }) =>
    `It is asked for on ${short(askedOn)}, so it cannot be due before that.`,
  more_than_to_ask: ({ leftCents }) =>
    leftCents > 0n
      ? `No more than ${formatCents(leftCents)} can still be asked for.`
      : 'Everything was asked for already.',
  more_than_owed: ({ owedCents }) =>
    owedCents > 0n
      ? `No more than ${formatCents(owedCents)} is owed in all.`
      : 'Everything is paid; nothing is owed.',
  unknown_instalment: () =>
    'That payment was not asked for on this commission. Choose another, or none.',
  card_number_in_reference: () =>
    'That looks like the number of a card, which is never kept. Write the slip number of the card terminal instead, or nothing.',
  may_begin_already: () =>
    'Everything is there: the making may begin without a word from the owner.',
  let_begin_already: () => 'The owner let the making begin before; the reason is on the sheet.',
  job_not_finished: ({ jobNumber }) =>
    `Job ${jobNumber} is not finished yet, so there is nothing to hand over.`,
  older_than_last_payment: ({ receivedOn }) =>
    `Money came in on ${short(receivedOn)}; the hand-over cannot be older than that.`,
  no_tax_rate_for_site: ({ place, on }) =>
    `No sales tax rate is kept for ${place} on ${short(on)}. The owner keeps the rates; a rate of 0 is one too.`,
  drawing_not_kept: () =>
    'The signature could not be read. Sign once more, or type your name instead.',
  paid_above_total: ({ paidCents, totalCents }) =>
    `${formatCents(paidCents)} was paid, more than the ${formatCents(totalCents)} it comes to with tax. Settle that with the collector first.`,
};

function short(day: Day): string {
  return formatDay(day, 'short');
}
