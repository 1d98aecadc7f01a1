import { z } from 'zod';
import { taxWays } from '@/lib/commissions/rules/agreement/tax';
import { staffPlaces } from '@/lib/commissions/rules/agreement/paper';
import { paymentKinds } from '@/lib/commissions/rules/words';
import { dayInput } from '@/lib/dates/input';
import { centsInput, percentInput, someCentsInput } from '@/lib/money/input';
import { known, saidLine } from './atoms';

const requestKey = z.uuid();
const commissionId = z.uuid();
const tick = z
  .enum(['yes', 'no'])
  .transform((said) => said === 'yes')
  .optional();

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
    signedWhere: z.enum(staffPlaces, { error: 'Say where it was signed.' }),
    /** Ticked: the papers for the right to cancel went with it. */
    cancelNotice: tick,
    taxAs: z.enum(taxWays, { error: 'Say how the tax looks at it.' }).optional(),
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
  /** The step of the plan that it asks for; empty for anything else. */
  stepPosition: known(
    z
      .string()
      .regex(/^[1-9]$/)
      .transform(Number),
  ).optional(),
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
  /** Ticked: what is more than is owed is kept for them. */
  keepsRest: tick,
  /** Ticked: it is another payment, and not the same one twice. */
  isAnother: tick,
});

/** The form that takes back what was asked for. */
export const withdrawAskInput = z.strictObject({
  requestKey,
  commissionId,
  instalmentId: z.uuid(),
  why: saidLine('Say why, in a few words.', 600),
});

/** The form that gives money back of a payment. */
export const giveBackInput = z.strictObject({
  requestKey,
  commissionId,
  paymentId: z.uuid({ error: 'Choose the payment.' }),
  amountCents: someCentsInput,
  kind: z.enum(paymentKinds, { error: 'Say how it goes back.' }),
  reference: z.string().trim().max(60, 'Keep it to 60 letters.').prefault(''),
  why: saidLine('Say why, in a few words.', 600).min(3, 'Say why, in a few words.'),
});

/** What taking back what was asked for takes. */
export type WithdrawAskInput = z.output<typeof withdrawAskInput>;

/** What giving money back takes. */
export type GiveBackInput = z.output<typeof giveBackInput>;

/** What writing down an agreement takes. */
export type AgreeInput = Omit<AgreeForm, 'signedWhere' | 'cancelNotice'> &
  Partial<Pick<AgreeForm, 'signedWhere' | 'cancelNotice'>>;
type AgreeForm = z.output<typeof agreeInput>;

/** What asking for money takes. */
export type AskForMoneyInput = z.output<typeof askForMoneyInput>;

/** What taking a payment takes. */
export type TakePaymentInput = z.output<typeof takePaymentInput>;
