import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';

/** Whether pieces of a set are sold one by one. */
export type MaySplit = 'may_be_split' | 'never_split' | 'split_at_single_price';

/** One piece of a set: its SKU, and how many of it the set has. */
export type SetMember = { skuId: string; code: string; title: string; quantity: number };

/** Pieces that belong together, as the counter needs them. */
export type KeptSet = {
  setId: string;
  /** Upper case, as on the tag. */
  code: string;
  title: string;
  /** For the whole set, in cents; null when it is the sum of its pieces. */
  priceCents: bigint | null;
  maySplit: MaySplit;
  note: string;
  members: readonly SetMember[];
};

/** Each way a set may be taken apart, in words. */
export const maySplitWords: Readonly<Record<MaySplit, string>> = {
  may_be_split: 'its pieces are sold one by one too, each at its part of the set’s price',
  never_split: 'never split',
  split_at_single_price: 'split only at the single prices',
};

/** Why a set was not kept. */
export type SetRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_set' }
  | { code: 'code_of_a_piece'; taken: string }
  | { code: 'code_of_a_set'; taken: string }
  | { code: 'unknown_code'; typed: string }
  | { code: 'too_few_pieces' }
  | { code: 'second_in_a_set'; sku: string };

/** Says in a full sentence why a set was not kept. */
export function setRefusalMessage(refusal: SetRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_set':
      return 'That set is not kept any more.';
    case 'code_of_a_piece':
      return `${refusal.taken} is the SKU of a piece. Give the set a code of its own.`;
    case 'code_of_a_set':
      return `${refusal.taken} is another set already.`;
    case 'unknown_code':
      return `${refusal.typed} is not in the catalogue. Look at the tag once more.`;
    case 'too_few_pieces':
      return 'A set has at least two pieces.';
    case 'second_in_a_set':
      return `${refusal.sku} is a second, and a set is of firsts.`;
  }
}

/** The field of the form that a refusal is told at; null for the form's head. */
export function setRefusalField({ code }: SetRefusal): 'code' | 'members' | null {
  if (code === 'code_of_a_piece' || code === 'code_of_a_set') return 'code';
  const isOfMembers =
    code === 'unknown_code' || code === 'too_few_pieces' || code === 'second_in_a_set';
  return isOfMembers ? 'members' : null;
}
