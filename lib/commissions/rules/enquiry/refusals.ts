import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';

/** Why something about an enquiry was not done, and the facts that explain each. */
export type EnquiryRefusalFacts = {
  referral_settled: unknown;
  brought_unknown: { readonly letters: string };
  brought_several: { readonly letters: string; readonly names: readonly string[] };
  brought_by_themselves: { readonly name: string };
  unknown_body: unknown;
  body_is_there: { readonly name: string };
  body_is_on_tiles: { readonly name: string };
};

/** Each of them in full sentences. */
export const enquirySentences: Sentences<EnquiryRefusalFacts> = {
  referral_settled: () =>
    'Who brought them was settled before it was agreed; only the owner changes that now.',
  brought_unknown: ({ letters }) =>
    `Nobody in the address book is like “${letters}”. Write them down there first, or leave it open for now.`,
  brought_several: ({ letters, names }) =>
    `More than one is like “${letters}”: ${names.join('; ')}. Write the whole name, or the telephone or mail of the one you mean.`,
  brought_by_themselves: ({ name }) =>
    `${name} asks for it and cannot have brought themselves. Write who did, or leave it open.`,
  unknown_body: () => 'That clay body is not written down here. Choose another, or none.',
  body_is_there: ({ name }) =>
    `A clay body called ${name} is written down already. Change that one, or give this one another name.`,
  body_is_on_tiles: ({ name }) =>
    `Colour tiles were shown that say they are of ${name}, so it keeps its name. Write the other one down as a new clay body.`,
};
