import type { ReturnedTo } from '@/lib/returns/rules/sold';

/** A gift voucher that was sold, and what it was used for. */
export type VoucherSold = {
  cents: bigint;
  forWhom: string;
  daysAgo: number;
  used?: { title: string; cents: bigint; daysAgo: number };
};

/** Gift vouchers of the demo: one used in part, one whole, two still lying in a drawer somewhere. */
export const vouchersSold: readonly VoucherSold[] = [
  {
    ...{ cents: 15_000n, forWhom: 'for Sabine, from her sisters', daysAgo: 64 },
    used: { title: 'Brass picture lamp', cents: 8_400n, daysAgo: 21 },
  },
  { cents: 10_000n, forWhom: 'a wedding at the point', daysAgo: 33 },
  { cents: 5_000n, forWhom: 'for the ferry crew’s captain', daysAgo: 12 },
  { cents: 25_000n, forWhom: 'for Oona, retiring', daysAgo: 4 },
];

type TakenBack = {
  /** Sold so long ago, or a little longer. */
  soldDaysAgo: number;
  daysAgo: number;
  kind: 'returned' | 'exchanged';
  how: 'same_way' | 'store_credit';
  feePercent: string;
  reason: string;
  to: ReturnedTo;
};

/** What came back in the demo's last weeks. */
export const takenBack: readonly TakenBack[] = [
  {
    ...{ soldDaysAgo: 19, daysAgo: 17, kind: 'returned', how: 'same_way', feePercent: '0' },
    ...{ reason: 'too wide between the windows', to: 'shelf' },
  },
  {
    ...{ soldDaysAgo: 11, daysAgo: 8, kind: 'exchanged', how: 'store_credit', feePercent: '0' },
    ...{ reason: 'they would rather have the larger one', to: 'shelf' },
  },
  {
    ...{ soldDaysAgo: 5, daysAgo: 2, kind: 'returned', how: 'same_way', feePercent: '0' },
    ...{ reason: 'cracked in the car on the way home', to: 'broken' },
  },
];

/** A store credit by the owner's hand. */
export const storeCreditGiven = {
  amountCents: 4_500n,
  daysAgo: 15,
  why: 'the wrong colour was sent, and they kept it',
} as const;
