import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { commissionRefusalMessage, type CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { formatDay, formatInstant, type Day } from '@/lib/dates/rules';
import { missingWords, type BeforeSigning } from './before-signing';

/** Why something of a work order was not taken in, and the facts that explain each. */
export type WorkRefusalFacts = {
  no_such_order: unknown;
  order_called_off: unknown;
  somebody_else: { readonly name: string };
  no_commission_here: unknown;
  not_the_owners_word: unknown;
  unknown_mender: unknown;
  mended_before_today: { readonly on: Day };
  unknown_snag: unknown;
  mended_already: { readonly on: Day };
  nothing_to_hand_over: unknown;
  not_of_the_crew: unknown;
  signed_already: { readonly signedBy: string; readonly at: Date; readonly by: string };
  still_missing: { readonly missing: readonly BeforeSigning[] };
  owner_says_first: { readonly phone: string };
  words_changed: unknown;
  codes_are_struck_out: unknown;
};

/** The name of a refusal. */
export type WorkRefusalCode = keyof WorkRefusalFacts;

/** Why something of a work order was not taken in. */
export type WorkRefusal<Code extends WorkRefusalCode = WorkRefusalCode> = {
  [One in Code]: { readonly code: One } & WorkRefusalFacts[One];
}[Code];

/** Everything that may be said to something sent by a work order. */
export type AnyWorkRefusal =
  WorkRefusal | CommissionRefusal | NotAllowed | { code: 'key_used_for_something_else' };

type Sentence<Code extends WorkRefusalCode> = (refusal: WorkRefusal<Code>, zone: string) => string;

const sentences: { [Code in WorkRefusalCode]: Sentence<Code> } = {
  no_such_order: () => 'That appointment is not in the diary any more.',
  order_called_off: () =>
    'The appointment was called off meanwhile. Call the gallery before you go on.',
  somebody_else: ({ name }) => `${name} wrote this on this device. Sign in as ${name} to send it.`,
  no_commission_here: () => 'This appointment is for no commission, so nothing is kept of a piece.',
  not_the_owners_word: () => 'Only the owner can say that it goes before it is paid.',
  unknown_mender: () => 'Choose somebody who works here to put it right.',
  mended_before_today: ({ on }) =>
    `${formatDay(on, 'long')} has passed already. Choose a later day.`,
  unknown_snag: () => 'That is not on the list any more. Open the page again.',
  mended_already: ({ on }) => `It was put right already, on ${formatDay(on, 'short')}.`,
  nothing_to_hand_over: () => 'Nothing is handed over on this day.',
  not_of_the_crew: () =>
    'Only those who go along to this appointment, or the owner, have it signed.',
  signed_already: ({ signedBy, at, by }, zone) =>
    `It was handed over already: ${signedBy} signed ${formatInstant(at, zone)}, with ${by}. ` +
    'This signature is not lost: it is kept on this device.',
  still_missing: ({ missing }) =>
    `Before it is signed there must be ${listed(missing.map((each) => missingWords[each]))}.`,
  owner_says_first: ({ phone }) =>
    'Something is to be paid before it goes, and only the owner can let it go without. ' +
    `Call the owner${phone === '' ? '' : `, ${phone}`}; once their word is written down, send it again.`,
  codes_are_struck_out: () => 'It was signed already, and the codes were struck out with it.',
  words_changed: () =>
    'What stands above the signature is not what the book says now. ' +
    'Open the work order with a line, and have it signed again. This one stays on this device.',
};

/** Says in full sentences why something of a work order was not taken in. */
export function workRefusalMessage(refusal: AnyWorkRefusal, zone: string): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (isOfWork(refusal)) return say(refusal, zone);
  return commissionRefusalMessage(refusal);
}

function say<Code extends WorkRefusalCode>(refusal: WorkRefusal<Code>, zone: string): string {
  const sentence: Sentence<Code> = sentences[refusal.code];
  return sentence(refusal, zone);
}

function isOfWork(refusal: AnyWorkRefusal): refusal is WorkRefusal {
  return Object.hasOwn(sentences, refusal.code);
}

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join('; ')}; and ${last}`;
}
