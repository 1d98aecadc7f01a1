import 'server-only';
import type { AnyDoer } from '@/lib/access/rules';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import type { ReadySignature } from '@/lib/commissions/writes/signature';
import type { Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, type Result } from '@/lib/platform/result';
import { addChange, addSignedChange } from './change';

/** A further round of sketches that was asked for and signed, beyond those included. */
export type ExtraRound = {
  commissionId: string;
  changeAskedId: string;
  round: number;
  feeCents: Cents;
  signature: ReadySignature;
  device: string;
};

/**
 * Makes a further round of sketches a change order, signed in the act in which it was asked for.
 * Joins the caller's transaction.
 *
 * @returns the number of the change order; refuses as a change and its signature do
 */
export async function addSignedExtraRound(
  tx: Tx,
  doer: AnyDoer,
  extra: ExtraRound,
): Promise<Result<{ number: number }, CommissionRefusal>> {
  const { commissionId, changeAskedId, round, feeCents, signature, device } = extra;
  const offered = await addChange(tx, doer, {
    ...{ commissionId, changeAskedId, words: `Round ${round} of changes to the sketch`, why: '' },
    ...{ askedBy: signature.signedName, kind: 'design_fee', priceCents: feeCents },
    ...{ dueEvent: null, promisedAfter: null },
  });
  if (!offered.ok) return offered;
  const { changeOrderId, number } = offered.value;
  const { contentSha256 } = await tx.changeOrder.findUniqueOrThrow({
    where: { id: changeOrderId },
    select: { contentSha256: true },
  });
  const signed = { commissionId, changeOrderId, contentSha256, signature, device };
  const done = await addSignedChange(tx, doer, signed);
  return done.ok ? ok({ number }) : done;
}
