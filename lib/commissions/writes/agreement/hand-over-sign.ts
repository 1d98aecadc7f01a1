import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { HandOverSigned } from '@/lib/commissions/input/agreement/hand-over';
import { readHandOverFacts } from '@/lib/commissions/reads/agreement/hand-over';
import { sha256Of } from '@/lib/commissions/reads/content';
import { handOverBody } from '@/lib/commissions/rules/agreement/hand-over';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  addSignature,
  readySignature,
  type ReadySignature,
} from '@/lib/commissions/writes/signature';
import type { Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, type Result } from '@/lib/platform/result';

/** What stands above the name at a hand-over, and the name, made ready before the transaction. */
export type HandOverToSign = Omit<HandOverSigned, 'signature'> & {
  signature: ReadySignature;
  device: string;
  /** The day that stood above the name, where a device had it signed by its own clock. */
  readOn?: Day | undefined;
};

/**
 * Makes the name under a hand-over ready to be kept, before any transaction is opened.
 *
 * @returns null where nobody signs; refuses `drawing_not_kept`
 */
export async function readyHandOver(
  sign: HandOverSigned | undefined,
  device: string,
): Promise<Result<HandOverToSign | null, CommissionRefusal>> {
  if (!sign) return ok(null);
  const signature = await readySignature(sign.signature);
  return signature.ok ? ok({ ...sign, signature: signature.value, device }) : signature;
}

/**
 * Keeps the name under the hand-over; what it stands under is kept with it word for word, as the
 * hand-over has no text of its own. Joins the caller's transaction.
 *
 * @returns the id of the signature
 */
export async function addHandOverSignature(
  tx: Tx,
  doer: Doer,
  sign: HandOverToSign,
  handed: { commissionId: string; handedOn: Day; remarks: string },
): Promise<string> {
  const { commissionId, handedOn, remarks } = handed;
  const { signature, device, parts, fixings, careGiven, readOn = handedOn } = sign;
  const facts = await readHandOverFacts(tx, commissionId);
  const body = handOverBody({
    ...{ ...facts, parts, fixings, careGiven, handedOn: readOn, remarks },
    takenBy: signature.signedName,
  });
  const signed = { commissionId, contentSha256: sha256Of(body), statement: body, device };
  return addSignature(tx, doer, signature, signed);
}
