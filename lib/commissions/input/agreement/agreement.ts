import { z } from 'zod';
import { known, lines, saidLine } from '@/lib/commissions/input/atoms';
import { signatureFields } from '@/lib/commissions/input/signature';
import { planEvents } from '@/lib/commissions/rules/facts';
import { staffPlaces, type SignedWhere } from '@/lib/commissions/rules/agreement/paper';
import { lineKinds } from '@/lib/commissions/rules/proposal/lines';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';

const requestKey = z.uuid();
const commissionId = z.uuid();
const contentSha256 = z.string().regex(/^[0-9a-f]{64}$/, 'Look at the paper again first.');

/** The form that signs the agreement. */
export const signAgreementInput = z.strictObject({
  requestKey,
  commissionId,
  contentSha256,
  signedWhere: z.enum(staffPlaces, { error: 'Say where it is signed.' }),
  /** Ticked: the papers for the right to cancel went with it. */
  cancelNotice: z.enum(['yes', 'no']).prefault('no'),
  ...signatureFields,
});

/** What signing the agreement takes. */
export type SignAgreementInput = Omit<z.output<typeof signAgreementInput>, 'signedWhere'> & {
  signedWhere: SignedWhere;
};

/** The form that writes a change order down. */
export const offerChangeInput = z
  .strictObject({
    requestKey,
    commissionId,
    words: saidLine('Say what becomes of it.', 1_000),
    why: lines,
    askedBy: saidLine('Write who asked for it.'),
    kind: z.enum(lineKinds, { error: 'Say what it is for.' }),
    way: z.enum(['more', 'less', 'same'], { error: 'Say whether it costs more or less.' }),
    amountCents: centsInput.prefault('0'),
    dueEvent: known(z.enum(planEvents)),
    promisedAfter: known(dayInput),
  })
  .superRefine((form, context) => {
    if (form.way !== 'same' && form.amountCents === 0n) {
      const message = 'Write by how much.';
      context.addIssue({ code: 'custom', path: ['amountCents'], message });
    }
  })
  .transform(({ way, amountCents, ...form }) => ({
    ...form,
    priceCents: way === 'same' ? 0n : way === 'more' ? amountCents : -amountCents,
  }));

/** What writing a change order down takes. */
export type OfferChangeInput = z.output<typeof offerChangeInput>;

/** The form that signs a change order. */
export const signChangeOrderInput = z.strictObject({
  requestKey,
  commissionId,
  changeOrderId: z.uuid(),
  contentSha256,
  ...signatureFields,
});

/** What signing a change order takes. */
export type SignChangeOrderInput = z.output<typeof signChangeOrderInput>;

/** The form that withdraws a change order. */
export const withdrawChangeInput = z.strictObject({
  requestKey,
  commissionId,
  changeOrderId: z.uuid(),
  why: saidLine('Say why, in a few words.', 600),
});

/** What withdrawing a change order takes. */
export type WithdrawChangeInput = z.output<typeof withdrawChangeInput>;
