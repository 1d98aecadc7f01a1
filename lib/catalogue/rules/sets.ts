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
