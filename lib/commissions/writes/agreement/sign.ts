import 'server-only';
import { isAtPage, staffIdOf, type AnyDoer } from '@/lib/access/rules';
import type { SignAgreementInput } from '@/lib/commissions/input/agreement/agreement';
import { readAgreementPaper, type AgreementPaper } from '@/lib/commissions/reads/agreement/paper';
import { decideAgreement } from '@/lib/commissions/rules/money/sums';
import { paidCents } from '@/lib/commissions/rules/facts';
import { clayFrom, type SignedWhere } from '@/lib/commissions/rules/agreement/paper';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from '@/lib/commissions/writes/carry-out';
import {
  addSignature,
  readySignature,
  type ReadySignature,
} from '@/lib/commissions/writes/signature';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** The agreement that was signed, and the first day for clay where a right to cancel runs. */
export type AgreementSigned = { commissionNumber: number; clayFromOn: Day | null };

/** An agreement to sign, by the hash of the words that were looked at. */
export type AgreementToSign = {
  commissionId: string;
  contentSha256: string;
  signedWhere: SignedWhere;
  cancelNotice: boolean;
  signature: ReadySignature;
  device: string;
};

/**
 * Signs the agreement that is built from the accepted proposal, the approved sketch and tiles. From
 * then on its words, lines and plan are kept as they were.
 *
 * Signed at the collector's home, no clay may be cut before the days to cancel are over.
 *
 * @param device what their browser says it is; empty for a paper
 * @returns refuses, in this order: not allowed, a signature that cannot be read, a key used for
 *   something else, unknown, ended early, handed over, agreed already, no accepted proposal, words
 *   that have changed since they were looked at, a whole below what came in already
 * @example two sign at the same moment: one is kept, the other is told that it is agreed
 */
export async function signAgreement(
  doer: AnyDoer,
  input: SignAgreementInput,
  device = '',
): Promise<Result<AgreementSigned, AnyRefusal>> {
  const signature = await readySignature(input);
  if (!signature.ok) return signature;
  const { requestKey, commissionId, contentSha256, signedWhere, cancelNotice } = input;
  const said = { commissionId, contentSha256, signedWhere, cancelNotice: cancelNotice === 'yes' };
  const command = {
    name: 'signAgreement',
    permission: 'commissions.agree',
    key: requestKey,
    input: { ...said, signedName: input.signedName },
    onTheirPage: { commissionId },
  } as const;
  const agreement = { ...said, signature: signature.value, device };
  return carryOut(doer, command, (tx) => addSignedAgreement(tx, doer, agreement));
}

/** The step of {@link signAgreement}: joins the caller's transaction, asks nobody for leave. */
export async function addSignedAgreement(
  tx: Tx,
  doer: AnyDoer,
  agreement: AgreementToSign,
): Promise<Result<AgreementSigned, CommissionRefusal>> {
  const found = await findOpen(tx, doer, agreement.commissionId);
  if (!found.ok) return found;
  const { facts, today, number: commissionNumber } = found.value;
  if (facts.agreement) {
    return refuse({ code: 'agreed_already', agreedOn: facts.agreement.agreedOn });
  }
  const paper = await readAgreementPaper(tx, agreement.commissionId, today);
  if (!paper) return refuse({ code: 'no_accepted_proposal' });
  if (paper.contentSha256 !== agreement.contentSha256) return refuse({ code: 'paper_changed' });
  const { priceCents } = paper.proposal;
  const deposit = { as: 'amount', amountCents: paper.depositCents } as const;
  const taxCents = paper.totalCents - priceCents;
  const decided = decideAgreement({ priceCents, deposit }, taxCents, paidCents(facts));
  if (!decided.ok) return decided;

  const signedWhere = isAtPage(doer) ? 'on_their_page' : agreement.signedWhere;
  const clayFromOn = clayFrom(signedWhere, today);
  await keep(tx, doer, { found: found.value, paper, agreement, signedWhere, clayFromOn });
  const { signedName: agreedBy } = agreement.signature;
  const told = { priceCents, agreedBy, sha256: paper.contentSha256 };
  const { commissionId } = agreement;
  await tellHistory(tx, doer, { commissionId, did: 'signed the agreement', facts: told });
  return ok({ commissionNumber, clayFromOn });
}

type Kept = {
  found: FoundCommission;
  paper: AgreementPaper;
  agreement: AgreementToSign;
  signedWhere: SignedWhere;
  clayFromOn: Day | null;
};

async function keep(tx: Tx, doer: AnyDoer, kept: Kept): Promise<void> {
  const { found, paper, agreement, signedWhere, clayFromOn } = kept;
  const { commissionId, contentSha256, signature, device, cancelNotice } = agreement;
  const { proposal, said } = paper;
  const statement = 'I have read this agreement and sign it.';
  const signed = { commissionId, contentSha256, statement, device };
  await tx.agreement.create({
    data: {
      ...{ commissionId, version: 1, proposalId: proposal.id, body: paper.body, contentSha256 },
      ...{ priceCents: proposal.priceCents, depositCents: paper.depositCents },
      ...{ taxPlaceId: proposal.taxPlaceId, taxAs: proposal.taxAs },
      promisedOn: proposal.readyToOn && dateFromDay(proposal.readyToOn),
      agreedOn: dateFromDay(found.today),
      agreedBy: signature.signedName,
      recordedById: staffIdOf(doer) ?? (await sellerOf(tx, commissionId)),
      at: doer.at,
      ...{ signedWhere, cancelNotice },
      clayFromOn: clayFromOn && dateFromDay(clayFromOn),
      designFeeCents: proposal.designFeeCents,
      ...{ roundsIncluded: proposal.roundsIncluded, extraRoundCents: proposal.extraRoundCents },
      cancelMakingPercent: said.cancelMakingPercent,
      cancelFinishedPercent: said.cancelFinishedPercent,
      signatureId: await addSignature(tx, doer, signature, signed),
      lines: { create: proposal.lines.map((line, at) => ({ ...line, position: at + 1 })) },
      steps: { create: [...paper.steps] },
    },
    select: { id: true },
  });
  await tx.commission.update({
    where: { id: commissionId },
    data: { taxAs: proposal.taxAs },
    select: { id: true },
  });
}

/** An agreement that was signed on the collector's own page is recorded by whoever took the request. */
async function sellerOf(tx: Tx, commissionId: string): Promise<string> {
  const { takenById } = await tx.commission.findUniqueOrThrow({
    where: { id: commissionId },
    select: { takenById: true },
  });
  return takenById;
}
