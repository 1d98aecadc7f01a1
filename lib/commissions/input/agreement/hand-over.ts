import { z } from 'zod';
import { known, lines, saidLine } from '@/lib/commissions/input/atoms';
import { signatureFields, type SignatureInput } from '@/lib/commissions/input/signature';
import { dayInput } from '@/lib/dates/input';

const why = saidLine('Say why, in a few words.', 600).min(3, 'Say why, in a few words.');

/** What stands above the name at a hand-over, and the name. */
export type HandOverSigned = {
  readonly parts: number | null;
  readonly fixings: string;
  readonly careGiven: boolean;
  readonly signature: SignatureInput;
};

/** The form that hands a piece over, signed by whoever takes it. */
export const signHandOverInput = z
  .strictObject({
    requestKey: z.uuid(),
    commissionId: z.uuid(),
    handedOn: dayInput,
    parts: known(
      z
        .string()
        .regex(/^[1-9]\d{0,3}$/, 'Write how many parts, in figures.')
        .transform(Number),
    ),
    fixings: z.string().trim().max(1_000, 'Keep it to 1,000 letters.').prefault(''),
    careGiven: z.enum(['yes', 'no']).prefault('no'),
    remarks: lines,
    /** Why it goes before the balance is in; empty when it is. */
    evenIfOwed: known(why).optional(),
    ...signatureFields,
  })
  .transform(({ requestKey, commissionId, handedOn, remarks, evenIfOwed, ...form }) => {
    const { parts, fixings, careGiven, ...signature } = form;
    const sign: HandOverSigned = { parts, fixings, careGiven: careGiven === 'yes', signature };
    const signedBy = signature.signedName;
    return { requestKey, commissionId, signedBy, handedOn, remarks, evenIfOwed, sign };
  });
