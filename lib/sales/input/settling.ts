import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { someCentsInput } from '@/lib/money/input';

/** Money that came for a sale on account, as a form sends it. */
export const settleAccountInput = z.object({
  requestKey: z.uuid(),
  saleId: z.uuid(),
  amount: someCentsInput,
  kind: z.enum(['cheque', 'bank_transfer', 'card', 'cash'], { error: 'Say how the money came.' }),
  reference: z.string().trim().max(60, 'A reference has at most 60 signs.').default(''),
  receivedOn: dayInput,
});

/** See {@link settleAccountInput}. */
export type SettleAccountInput = z.output<typeof settleAccountInput>;
