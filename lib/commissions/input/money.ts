import { z } from 'zod';
import { paymentKinds } from '@/lib/commissions/rules/words';
import { dayInput } from '@/lib/dates/input';
import { centsInput, percentInput, someCentsInput } from '@/lib/money/input';
import { known, saidLine } from './atoms';

const requestKey = z.uuid();
const commissionId = z.uuid();

/** The form that writes down what was agreed: the deposit is an amount or a share of the whole. */
export const agreeInput = z
  .strictObject({
    requestKey,
    commissionId,
    priceCents: someCentsInput,
    depositAs: z.enum(['amount', 'percent'], { error: 'Say how the deposit is given.' }),
    depositText: z.string().trim().min(1, 'Write the deposit; 0 for none.'),
    taxPlaceId: z.uuid({ error: 'Choose the place whose sales tax applies.' }),
    promisedOn: known(dayInput),
    agreedOn: dayInput,
    agreedBy: saidLine('Write who agreed, as they sign.'),
  })
  .transform(({ depositAs, depositText, ...form }, context) => {
    const read = (depositAs === 'amount' ? centsInput : percentInput).safeParse(depositText);
    if (!read.success) {
      const message = read.error.issues[0]?.message ?? 'Write the deposit.';
      context.addIssue({ code: 'custom', path: ['depositText'], message });
      return z.NEVER;
    }
    const deposit =
      typeof read.data === 'bigint'
        ? { as: 'amount' as const, amountCents: read.data }
        : { as: 'percent' as const, percent: read.data };
    return { ...form, deposit };
  });

/** The form that asks for money. */
export const askForMoneyInput = z.strictObject({
  requestKey,
  commissionId,
  name: saidLine('Say what it is for, such as Deposit.', 60),
  amountCents: someCentsInput,
  dueOn: dayInput,
});

/** The form that takes a payment. */
export const takePaymentInput = z.strictObject({
  requestKey,
  commissionId,
  instalmentId: known(z.uuid()),
  amountCents: someCentsInput,
  kind: z.enum(paymentKinds, { error: 'Say how it was paid.' }),
  reference: z.string().trim().max(60, 'Keep it to 60 letters.').prefault(''),
  paidBy: saidLine('Write who paid.'),
});

/** What writing down an agreement takes. */
export type AgreeInput = z.output<typeof agreeInput>;

/** What asking for money takes. */
export type AskForMoneyInput = z.output<typeof askForMoneyInput>;

/** What taking a payment takes. */
export type TakePaymentInput = z.output<typeof takePaymentInput>;
