import { z } from 'zod';
import { centsInput } from '@/lib/money/input';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { wholeInput } from './whole';

const floatMostCents = 1_000_000n;

/** A share in a hundred with at most two decimals, kept as the exact text. */
const sharePercent = z
  .string()
  .trim()
  .refine(isShare, 'Write a percentage from 0 to 100 with at most two decimals, such as 12.5.');

function isShare(text: string): boolean {
  const share = parseDecimal(text);
  if (!share || share.units < 0n || share.scale > 2) return false;
  return share.units <= 100n * 10n ** BigInt(share.scale);
}

/** What holds at the counter: who may take off how much, and how long things are kept. */
export const counterTermsInput = z.strictObject({
  requestKey: z.uuid(),
  staffDiscountPercent: sharePercent,
  returnDays: wholeInput('days', { least: 0, most: 365 }),
  restockingFeePercent: sharePercent,
  returnTerms: z.string().trim().max(1000, 'Keep it to 1,000 letters.'),
  holdHours: wholeInput('hours', { least: 1, most: 2160 }),
  layawayDownPercent: sharePercent,
  layawayDays: wholeInput('days', { least: 1, most: 730 }),
  layawayTerms: z.string().trim().max(2000, 'Keep it to 2,000 letters.'),
  approvalDays: wholeInput('days', { least: 1, most: 90 }),
  drawerFloatCents: centsInput.refine(
    (cents) => cents <= floatMostCents,
    'Leave at most $10,000.00 in the drawer overnight.',
  ),
});

/** What {@link counterTermsInput} gives. */
export type CounterTermsInput = z.output<typeof counterTermsInput>;
